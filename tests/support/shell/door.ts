import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { ConnectedBackend } from '../../../renderer/backend/connect.ts';
import { createFrameBackend } from '../../../renderer/backend/frame-backend.ts';
import { type SocketLike, socketCarrier } from '../../../renderer/backend/socket-carrier.ts';
import { openSocket } from './carriers.ts';

export type RunningDoor = {
  process: ChildProcess;
  startAddress: string;
  connect(): Promise<ConnectedBackend>;
  /** Ends the process with a signal and waits for it. */
  end(signal: NodeJS.Signals): Promise<number | null>;
};

/** The real local door as its own process, without a window. */
export async function runDoor(mainFolder: string, folder: string, words: string[] = []): Promise<RunningDoor> {
  const places = ['--shelf', join(folder, 'shelf'), '--app-folder', join(folder, 'app')];
  const child = spawn(process.execPath, [join(mainFolder, 'local-app.js'), '--no-window', ...places, ...words], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const exited = new Promise<number | null>((resolve) => child.once('exit', resolve));
  onTestFinished(() => void child.kill('SIGKILL'));
  const startAddress = await addressFrom(child);
  return {
    process: child,
    startAddress,
    async connect() {
      const socket = await openSocket(startAddress);
      return createFrameBackend(socketCarrier(socket as unknown as SocketLike));
    },
    end(signal) {
      child.kill(signal);
      return exited;
    },
  };
}

function addressFrom(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = '';
    child.stdout?.on('data', (data: Buffer) => {
      text += data.toString();
      const address = /http:\S+/.exec(text)?.[0];
      if (address) resolve(address);
    });
    child.once('exit', (code) => reject(new Error(`the door ended with ${code}: ${text}`)));
  });
}
