/** Poses are a rule, because the command line moves parts too. */
export { boardToOwn, poseParts, tidy, wholeTurn } from '../../shared-types/rules/part-poses.ts';
