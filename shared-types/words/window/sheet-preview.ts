/** Words of the sheet as it is shown before it is printed. */
export const sheetPreviewWords = {
  sheet: 'The sheet as it will print',
  page: (page: number, of: number) => `Page ${page} of ${of}`,
  drawing: 'Drawing the sheet',
  fitLabel: 'Size of the pages',
  fit: { width: 'Page width', page: 'Whole page' },
} as const;
