import type { PhotoAnswer, PhotoJob } from './photo-messages.ts';

/** Runs one job in a worker of its own: what decoding took is given back with it. Rejects when the worker cannot be started or dies. */
export function askPhotoWorker<K extends PhotoJob['kind']>(
  job: Extract<PhotoJob, { kind: K }>,
): Promise<Extract<PhotoAnswer, { kind: K }>> {
  const worker = new Worker(new URL('./photo.worker.ts', import.meta.url), { type: 'module' });
  return new Promise<Extract<PhotoAnswer, { kind: K }>>((resolve, reject) => {
    worker.onmessage = ({ data }) => resolve(data);
    worker.onerror = () => reject(new Error('the photo worker failed'));
    worker.postMessage(job, 'bytes' in job ? [job.bytes.buffer] : []);
  }).finally(() => worker.terminate());
}
