import { protocol } from 'electron';
import { PAGE_HEADERS } from '../content-security.ts';
import type { PageFiles } from '../page-files.ts';

const SCHEME = 'app';
const HOST = 'heatmargin';
export const START_URL = `${SCHEME}://${HOST}/index.html`;

/** True for an address of the program's own window. */
export function isOwnUrl(url: string): boolean {
  try {
    const { protocol: scheme, host } = new URL(url);
    return scheme === `${SCHEME}:` && host === HOST;
  } catch {
    return false;
  }
}

/** Must run before the app is ready. The scheme has an origin of its own, so the policy's 'self' means the program. */
export function declareScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
}

/** Serves the built window under app://heatmargin/; nothing else can be asked for. */
export function serveScheme(pages: PageFiles): void {
  protocol.handle(SCHEME, (request) => answer(pages, request));
}

async function answer(pages: PageFiles, request: Request): Promise<Response> {
  const isRead = request.method === 'GET' || request.method === 'HEAD';
  const file = isRead && isOwnUrl(request.url) ? await pages(new URL(request.url).pathname) : null;
  if (!file) return new Response(null, { status: isRead ? 404 : 405, headers: PAGE_HEADERS });
  return new Response(file.bytes, { headers: { ...PAGE_HEADERS, 'Content-Type': file.type } });
}
