import { timingSafeEqual } from 'node:crypto';
import type { IncomingHttpHeaders } from 'node:http';

/** Facts of one request to the local server. */
export type Knock = { method: string; path: string; headers: IncomingHttpHeaders };
/** What the server knows: its own address and this run's secret. */
export type House = { host: string; token: string };

/** Cookies do not tell ports apart, so two running doors need two names. */
export const cookieName = (house: House): string => `heatmargin-${house.host.split(':')[1]}`;
export const START_PATH = '/start';

/**
 * Why a request is turned away, as a status; null: it may come in. Other programs' pages on this machine can reach the port too, so
 * the exact Host (against rebound names), the run's token, and where the request was made from are all checked.
 */
export function refusal(house: House, knock: Knock): 400 | 403 | 405 | null {
  if (knock.headers.host !== house.host) return 400;
  if (knock.method !== 'GET' && knock.method !== 'HEAD') return 405;
  const site = knock.headers['sec-fetch-site'];
  if (knock.path === START_PATH) return site === undefined || site === 'none' || site === 'same-origin' ? null : 403;
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return 403;
  return hasToken(house, knock.headers) ? null : 403;
}

/** The same for the socket, through which every change goes: the page's own origin must ask. */
export function socketRefusal(house: House, knock: Knock): 400 | 403 | 405 | null {
  const refused = refusal(house, knock);
  if (refused) return refused;
  if (knock.headers.origin !== `http://${house.host}`) return 403;
  const site = knock.headers['sec-fetch-site'];
  return site === undefined || site === 'same-origin' ? null : 403;
}

function hasToken(house: House, headers: IncomingHttpHeaders): boolean {
  const cookies = (headers.cookie ?? '').split(';').map((cookie) => cookie.trim());
  return cookies.some(
    (cookie) =>
      cookie.startsWith(`${cookieName(house)}=`) && sameText(cookie.slice(cookieName(house).length + 1), house.token),
  );
}

/** Compares secrets in a time that does not depend on where they differ. */
export function sameText(given: string, wanted: string): boolean {
  const [a, b] = [Buffer.from(given), Buffer.from(wanted)];
  return a.byteLength === b.byteLength && timingSafeEqual(a, b);
}

/** The cookie that carries the token; the page's scripts cannot read it, other sites' pages do not send it. */
export const tokenCookie = (house: House): string =>
  `${cookieName(house)}=${house.token}; HttpOnly; SameSite=Strict; Path=/`;
