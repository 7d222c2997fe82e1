import { importWords as words } from '../../../shared-types/words/window/start.ts';
import type { ImportedBoard } from '../../state/app-state.ts';

/** What an import found, guessed or left out, the gravest first. */
export function Notes({ notes }: { notes: ImportedBoard['read']['notes'] }) {
  if (notes.length === 0) return <p className="soft">{words.noNotes}</p>;
  const rank = { stop: 0, warn: 1, note: 2 };
  return (
    <ul className="note-list" aria-label={words.notes}>
      {notes
        .toSorted((a, b) => rank[a.weight] - rank[b.weight])
        .map((note) => (
          <li key={`${note.weight} ${note.sentence}`} data-weight={note.weight}>
            <span className="weight">{words.weights[note.weight]}</span>
            <div>
              <p>{note.sentence}</p>
              <Named note={note} />
            </div>
          </li>
        ))}
    </ul>
  );
}

/** The parts that a note is about, where its sentence does not name them all. */
function Named({ note }: { note: ImportedBoard['read']['notes'][number] }) {
  const said = new Set(note.sentence.split(/[\s,.;:()]+/));
  const { refdes = [] } = note;
  return refdes.every((one) => said.has(one)) ? null : <p className="named">{words.partsNamed(refdes)}</p>;
}
