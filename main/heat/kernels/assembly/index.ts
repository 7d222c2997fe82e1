export { solveCells } from './cells';
export { feedFaces, giveBack, takeIn } from './entries';
export { entryFilms, shieldEntries } from './entry-films';
export { faceRates } from './faces';
export { solveLines } from './lines';
export { beginStep, settleMoment } from './moment';
export { addEnergy, filmsAtEnd, foldBodies, foldSkins, stepShadows } from './tracking';
