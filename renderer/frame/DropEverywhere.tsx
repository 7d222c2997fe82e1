import { useEffect, useState } from 'react';
import { frameWords as words } from '../../shared-types/words/window/frame.ts';
import { droppedFiles } from '../stages/start/dropped-files.ts';
import { takeFiles } from '../stages/start/take-files.ts';
import { useApp } from '../state/use-app.ts';

const holdsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;

/** Files may be dropped anywhere on the window. */
export function DropEverywhere() {
  const app = useApp();
  const [over, setOver] = useState(false);
  useEffect(() => {
    const onOver = (event: DragEvent) => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const onLeave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent) => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(false);
      void droppedFiles(event.dataTransfer).then((files) => takeFiles(app, files));
    };
    window.addEventListener('dragover', onOver);
    window.addEventListener('dragleave', onLeave);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onOver);
      window.removeEventListener('dragleave', onLeave);
      window.removeEventListener('drop', onDrop);
    };
  }, [app]);
  if (!over) return null;
  return (
    <div className="drop-veil">
      <p className="title">{words.dropHere}</p>
      <p className="soft">{words.dropText}</p>
    </div>
  );
}
