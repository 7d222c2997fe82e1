/** The few parts of the general-purpose DXF reader that tests use; it comes without types. */
declare module 'dxf' {
  export class Helper {
    constructor(text: string);
    readonly denormalised: readonly { readonly type: string }[];
    toPolylines(): {
      polylines: readonly { readonly vertices: readonly (readonly [number, number])[] }[];
      bbox: { min: { x: number; y: number }; max: { x: number; y: number } };
    };
  }
}
