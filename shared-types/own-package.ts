import { z } from 'zod';

/** A package that somebody measured: kept with a board or in the user's own library. Lengths in mm. */
export const ownPackageSchema = z.strictObject({
  name: z.string().min(1).max(200),
  shape: z.enum(['rectangle', 'round']),
  lengthMm: z.number().positive().max(2000).describe('Along its own x axis; a round one: its diameter.'),
  widthMm: z.number().positive().max(2000).describe('Along its own y axis; a round one: its diameter.'),
  heightMm: z.number().positive().max(200).nullable().describe('null: not known, the class gives one.'),
  class: z.string().min(1).max(64).describe('Id of a part class in the library.'),
  pinCount: z.int().positive().max(10000).optional(),
});
export type OwnPackage = z.infer<typeof ownPackageSchema>;

export const ownPackagesSchema = z.array(ownPackageSchema).max(2000).describe('Packages of its own, by unique names.');
