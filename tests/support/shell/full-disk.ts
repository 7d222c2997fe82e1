import { type FileSystem, nodeFileSystem } from '../../../main/files/file-system.ts';

export type FaultyDisk = {
  fs: FileSystem;
  /** Which paths the disk refuses to write, with which code; null: none. */
  refuse: ((path: string) => string | null) | null;
};

const refusal = (code: string) => Object.assign(new Error(`${code}: injected`), { code });

/** The real disk, with writes that a test makes fail: opening is allowed, writing is not, as on a full disk. */
export function faultyDisk(): FaultyDisk {
  const disk: FaultyDisk = {
    refuse: null,
    fs: {
      ...nodeFileSystem,
      async open(path, flags, mode) {
        const handle = await nodeFileSystem.open(path, flags, mode);
        if (flags === 'r') return handle;
        const check = () => {
          const code = disk.refuse?.(String(path));
          if (code) throw refusal(code);
        };
        const writes = {
          writeFile: async (data: string | Uint8Array) => {
            // Half of it still fits.
            if (disk.refuse?.(String(path))) await handle.writeFile(data.slice(0, data.length / 2));
            check();
            await handle.writeFile(data);
          },
          appendFile: async (data: string | Uint8Array) => {
            if (disk.refuse?.(String(path))) await handle.appendFile(data.slice(0, data.length / 2));
            check();
            await handle.appendFile(data);
          },
        };
        return new Proxy(handle, {
          get(target, key) {
            if (key in writes) return writes[key as keyof typeof writes];
            const value = Reflect.get(target, key, target) as unknown;
            return typeof value === 'function' ? value.bind(target) : value;
          },
        });
      },
    },
  };
  return disk;
}
