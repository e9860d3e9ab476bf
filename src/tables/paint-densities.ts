/**
 * Densities of paints whose name says what pigment they are of, ground in oil.
 *
 * Specific gravity of the pigments: R. J. Gettens & G. L. Stout, Painting Materials (1942), table "Physical properties of
 * pigments". Oil that they take, grams for 100 g: A. H. Church, The Chemistry of Paints and Painting (3rd ed. 1901), "Amounts of
 * oil required", the second of two columns (the first lacks vermilion; they differ by up to a factor of two). What neither
 * gives, and chrome yellow's, emerald green's and cobalt blue's gravity, is from memory, and said so below. Lakes are left out:
 * how dense one is depends on what the dye lies on.
 */
interface OilPaint {
  /** All that it goes by, in small letters without spaces. */
  readonly names: readonly string[];
  /** g/ml of the dry pigment. */
  readonly gravity: number;
  /** Grams of oil to 100 g of pigment. */
  readonly oil: number;
}

const OIL_PAINTS: readonly OilPaint[] = [
  { names: ['bariumsulphate', 'bariumsulfate', 'blancfixe'], gravity: 4.36, oil: 12 }, // oil from memory
  { names: ['boneblack', 'ivoryblack'], gravity: 2.29, oil: 112 },
  { names: ['burntsienna'], gravity: 3.56, oil: 150 },
  { names: ['burntumber'], gravity: 3.64, oil: 87 },
  { names: ['cadmiumyellow'], gravity: 4.35, oil: 57 },
  { names: ['calciumcarbonate', 'whiting'], gravity: 2.7, oil: 20 }, // oil from memory
  { names: ['chromeyellow'], gravity: 5.96, oil: 56 }, // gravity from memory
  { names: ['cobaltblue'], gravity: 3.83, oil: 90 }, // gravity from memory
  { names: ['emeraldgreen'], gravity: 3.27, oil: 35 }, // both from memory
  { names: ['leadwhite', 'whitelead', 'flakewhite'], gravity: 6.7, oil: 15 },
  { names: ['minium', 'redlead'], gravity: 8.73, oil: 10 }, // oil from memory
  { names: ['prussianblue'], gravity: 1.83, oil: 78 },
  { names: ['rawsienna'], gravity: 3.14, oil: 240 },
  { names: ['rawumber'], gravity: 3.2, oil: 95 },
  { names: ['ultramarine'], gravity: 2.34, oil: 43 },
  { names: ['vandykebrown'], gravity: 1.66, oil: 94 },
  { names: ['vermilion', 'vermillion'], gravity: 8.09, oil: 23 },
  { names: ['viridian'], gravity: 3.32, oil: 52 },
  { names: ['zincwhite'], gravity: 5.65, oil: 23 },
];

/** g/ml of linseed oil. From memory. */
const OIL_DENSITY = 0.93;

/**
 * Density of the paint that a name speaks of, g/ml; undefined if it names no pigment of the table.
 *
 * @example paintDensity('Zinc white, batch 2') // 2.9, to 2 digits
 */
export function paintDensity(name: string): number | undefined {
  const letters = name.toLowerCase().replace(/[^a-z]/g, '');
  const paint = OIL_PAINTS.find(({ names }) => names.some((each) => letters.includes(each)));
  if (!paint) return undefined;
  const oil = paint.oil / 100;
  return (1 + oil) / (1 / paint.gravity + oil / OIL_DENSITY);
}
