type PartFigures = {
  peakBodyMax: number;
  peakBodyMean: number;
  peakSkinMax: number;
  peakJointMax: number;
  peakJointMin: number;
};

export function solveCase(
  given: object,
  options: { cellMm: number; stepS: number },
): { nozzle: { Re: number; hPlateau: number } | null; parts: Record<string, PartFigures> };

export function nozzleStrength(
  nozzle: object,
  hood: object | null | undefined,
  gas: number,
  flow: number,
): { Re: number; K: number; D: number };
