/** The text of `kernel-bytes.ts` for the source as it is. */
export function kernelModule(): Promise<string>;
