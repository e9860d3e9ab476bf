/** What this book uses of js-aruco2 2.0.0, which comes without types. */
declare module 'js-aruco2/src/aruco.js' {
  interface Corner {
    readonly x: number;
    readonly y: number;
  }
  interface FoundMark {
    readonly id: number;
    /** Clockwise from the mark's own left top. */
    readonly corners: readonly [Corner, Corner, Corner, Corner];
    /** How many of its cells differ from the code of its id. */
    readonly hammingDistance: number;
  }
  interface Detector {
    detect(image: { width: number; height: number; data: ArrayLike<number> }): readonly FoundMark[];
  }
  const aruco: {
    readonly AR: {
      readonly Detector: new (options: { dictionaryName: string; maxHammingDistance?: number }) => Detector;
    };
  };
  export default aruco;
}
