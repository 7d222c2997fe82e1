import { app, dialog } from 'electron';
import { problemSentence } from '../../../shared-types/words/problems.ts';
import { closing } from '../../../shared-types/words/shell.ts';
import type { Program } from '../../contract/program.ts';

/** Lets the app quit only when every ticket is saved, or the user decided to leave with what the journal holds. */
export function saveBeforeQuitting(program: Program): void {
  let mayQuit = false;
  app.on('will-quit', (event) => {
    if (mayQuit) return;
    event.preventDefault();
    void saveAll(program).then(() => {
      mayQuit = true;
      app.quit();
    });
  });
}

async function saveAll(program: Program): Promise<void> {
  for (;;) {
    const left = await program.close();
    if (left.length === 0) return;
    const { response } = await dialog.showMessageBox({
      ...{ type: 'warning', message: closing.title, detail: left.map(problemSentence).join('\n') },
      ...{ buttons: [closing.tryAgain, closing.leave], defaultId: 0, cancelId: 0, noLink: true },
    });
    if (response === 1) return;
  }
}
