import { CircleAlert, Info, TriangleAlert, X } from 'lucide-react';
import { frameWords as words } from '../../shared-types/words/window/frame.ts';
import { useApp, useAppState } from '../state/use-app.ts';
import { Icon, IconButton } from '../widgets/Buttons.tsx';

const icons = { problem: CircleAlert, warn: TriangleAlert, note: Info };

/** What went wrong or is worth knowing: what, where, what to do. It stays until it is dismissed. */
export function Notices() {
  const app = useApp();
  const notices = useAppState((state) => state.notices);
  if (notices.length === 0) return null;
  return (
    <section className="notices" aria-label={words.notices}>
      {notices.map((notice) => (
        <div key={notice.id} className="notice" role={notice.weight === 'problem' ? 'alert' : 'status'}>
          <Icon of={icons[notice.weight]} />
          <div className="text">
            <p>{notice.title}</p>
            {notice.text && <p>{notice.text}</p>}
          </div>
          <IconButton icon={X} label={words.dismiss} small onPress={() => app.dismiss(notice.id)} />
        </div>
      ))}
    </section>
  );
}
