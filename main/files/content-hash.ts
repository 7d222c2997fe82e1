import { createHash } from 'node:crypto';

/** SHA-256 of a file's content, as hex. Two benches compare contents, never dates. */
export const contentHash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** A short name for a path that says nothing about it: pages and the app's own folder see only this. */
export const opaqueId = (path: string): string => createHash('sha256').update(path).digest('base64url').slice(0, 22);
