export { solveCells } from './cells';
export { feedFaces, giveBack, takeIn } from './entries';
export { entryFilms, shieldEntries } from './entry-films';
export { faceRates, irradiateFaces } from './faces';
export { solveLines } from './lines';
export { addEnergy, filmsAtEnd, foldBodies, foldSkins, stepShadows } from './tracking';
