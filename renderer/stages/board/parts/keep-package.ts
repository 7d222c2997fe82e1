import type { OwnPackage } from '../../../../shared-types/own-package.ts';
import { ownPackageWords as words } from '../../../../shared-types/words/window/parts.ts';
import { putBoardPackage, removeBoardPackage, withPackage } from '../../../editing/own-packages.ts';
import type { App } from '../../../state/app.ts';

/** Where an own package is kept: with the board, as an undo step, or in the user's settings. */
export type Home = 'board' | 'user';
/** A package in the editor; `former`: its name before, null for a new one. */
export type PackageDraft = { home: Home; former: string | null; own: OwnPackage };

/** Takes a package out of its home. */
export function dropPackage(app: App, home: Home, name: string): void {
  if (home === 'board') app.bench.apply(words.removeStep, (document) => removeBoardPackage(document, name));
  else app.changeSettings({ packages: app.store.get().settings.packages.filter((one) => one.name !== name) });
}

/** Keeps what the editor holds where it says, and takes it out of the other home when it moved. */
export function keepPackage(app: App, { home, former }: PackageDraft, to: Home, own: OwnPackage): void {
  const moved = former !== null && home !== to;
  if (moved) dropPackage(app, home, former);
  const place = moved ? null : former;
  if (to === 'board') app.bench.apply(words.keepStep, (document) => putBoardPackage(document, place, own));
  else app.changeSettings({ packages: withPackage(app.store.get().settings.packages, place, own) });
}
