import { expect, test } from 'vitest';
import {
  offerOfOwn,
  ownFromPart,
  putBoardPackage,
  removeBoardPackage,
  withPackage,
} from '../../../../renderer/editing/own-packages.ts';
import { setPackage } from '../../../../renderer/editing/parts.ts';
import { type OwnPackage, ownPackageSchema } from '../../../../shared-types/own-package.ts';
import { offerPackages } from '../../../../shared-types/rules/package-offers.ts';
import { smallDocument } from './sample-document.ts';

const slab: OwnPackage = { name: 'Slab 8x5', shape: 'rectangle', lengthMm: 8, widthMm: 5, heightMm: 3, class: 'relay' };

test('a package is kept with the board, edited, renamed and taken out', () => {
  let next = putBoardPackage(smallDocument(), null, slab);
  next = putBoardPackage(next, null, { ...slab, name: 'Slab 9x5', lengthMm: 9 });
  next = putBoardPackage(next, 'Slab 8x5', { ...slab, name: 'Slab, low', heightMm: 1 });
  expect(next.board.packages.map((one) => `${one.name} ${one.heightMm}`)).toEqual(['Slab, low 1', 'Slab 9x5 3']);
  expect(removeBoardPackage(next, 'Slab, low').board.packages.map((one) => one.name)).toEqual(['Slab 9x5']);
  expect(removeBoardPackage(next, 'nothing')).toBe(next);
});

test('names stay unique: a new one of the same name takes the place', () => {
  const list = withPackage([slab], null, { ...slab, lengthMm: 10 });
  expect(list).toEqual([{ ...slab, lengthMm: 10 }]);
  const two = withPackage(list, null, { ...slab, name: 'Other' });
  expect(withPackage(two, 'Other', slab).map((one) => one.name)).toEqual(['Slab 8x5']);
});

test('it is offered before built-in ones of the same size, and a part takes it', () => {
  const own = [offerOfOwn(slab, 'board'), offerOfOwn({ ...slab, name: 'My 0402' }, 'user')];
  expect(offerPackages('slab', own)[0]).toMatchObject({ name: 'Slab 8x5', from: 'board', classId: 'relay' });
  expect(offerPackages('0402', own)[0].name).toBe('My 0402');
  const next = setPackage(smallDocument(), ['C1'], own[0]);
  expect(next.board.parts[1]).toMatchObject({ class: 'relay', package: { name: 'Slab 8x5', heightMm: 3 } });
  expect(ownPackageSchema.parse(ownFromPart(next.board.parts[1]))).toEqual(slab);
});
