import { useMemo } from 'react';
import type { PackageOffer } from '../../../../shared-types/rules/package-offers.ts';
import { offerOfOwn } from '../../../editing/own-packages.ts';
import { useAppState, useDocument } from '../../../state/use-app.ts';

/** Packages of the board's and the user's own, the board's first; a name of both is the board's. */
export function useOwnPackages(): readonly PackageOffer[] {
  const { packages } = useDocument().board;
  const users = useAppState((state) => state.settings.packages);
  return useMemo(() => {
    const names = new Set(packages.map((one) => one.name));
    const others = users.filter((one) => !names.has(one.name));
    return [...packages.map((one) => offerOfOwn(one, 'board')), ...others.map((one) => offerOfOwn(one, 'user'))];
  }, [packages, users]);
}
