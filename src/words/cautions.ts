/**
 * The usual cautions of the bench. They stand wherever someone is told to heat.
 *
 * Common practice, from memory, no source; the supplier's safety data sheet comes before them.
 *
 * @packageDocumentation
 */
import type { Settings } from '../book/model.ts';
import { usualVolume } from '../units/usual-volume.ts';
import { BURNT_LINE, SMOKING_LINE } from './first-aid.ts';
import { temperatureText } from './temperature-text.ts';

/** One caution: what to do, and why. */
export interface Caution {
  /** Where it stands on the page Care. */
  readonly id: string;
  readonly name: string;
  /** For lists that stand where something is heated; absent of what is read beforehand. */
  readonly short?: string;
  readonly text: string | ((settings: Pick<Settings, 'temperature' | 'volume'>) => string);
}

/** Cautions of one subject. */
export interface CautionGroup {
  readonly title: string;
  readonly cautions: readonly Caution[];
}

const ROOM: CautionGroup = {
  title: 'You and the room',
  cautions: [
    {
      id: 'sheet',
      name: 'Data sheet first',
      short: 'Read the supplier’s safety data sheet first.',
      text: 'Read each material’s safety data sheet before you open it, and follow it. Where this book and the supplier disagree, the supplier is right.',
    },
    {
      id: 'people',
      name: 'Who is in the room',
      text: 'Two are better than one: somebody has to switch off and call for help. Children stay out. So do pets, and birds first of all: fumes that you hardly notice can kill a bird. Whoever is pregnant stays out too; with asthma or weak lungs, ask a doctor first.',
    },
    {
      id: 'air',
      name: 'Air',
      short: 'Work under a fume hood or in a strong draught to the outside.',
      text: 'Heat under a hood that vents outside, or in a draught that carries the fumes away from you. Overheated vinyl gives off hydrogen chloride, and your nose is no gauge of it: what stings is already too much. The white mist over a cup, even one that isn’t too hot, is plasticiser: no good for you either, and it leaves a slippery film.',
    },
    {
      id: 'respirator',
      name: 'Respirator',
      text: 'A dust mask stops no fumes. Cartridges for organic vapour and acid gas do, while they are in date and the mask seals, which it won’t over a beard. Even then a respirator only backs up the hood.',
    },
    {
      id: 'eyes',
      name: 'Eyes',
      short: 'Wear goggles.',
      text: 'Everyone nearby wears goggles that seal at the sides, from the first cup to the last.',
    },
    {
      id: 'skin',
      name: 'Skin',
      short: 'Wear heat-proof gloves and long sleeves.',
      text: 'Wear heat-proof gloves, long sleeves, long trousers and closed shoes. Hot plastic sticks and goes on burning. Know where the nearest tap is.',
    },
  ],
};

const HEAT: CautionGroup = {
  title: 'Heat',
  cautions: [
    {
      id: 'temperature',
      name: 'Temperature',
      short: 'Use a thermometer and stay below the cup’s maximum.',
      text: 'Measure with a thermometer in the plastic, and stir. A cup’s maximum is the lowest of everything in it: laser and hologram flake scorch sooner than plain polyester. Where this book names no maximum for a material, ask its supplier.',
    },
    {
      id: 'thermometer',
      name: 'Thermometers',
      text: (settings) =>
        `A thermometer that you point at the cup reads only the skin on top, and pearl and steam fool it. Trust a probe in stirred plastic. Try the probe in boiling water now and then: it should read ${temperatureText(100, settings)} (a little less up in the hills), give or take ${settings.temperature === '°F' ? '4 °F' : '2 °C'}. Dry it well before it goes near plastic.`,
    },
    {
      id: 'microwave',
      name: 'Microwave',
      text: (settings) =>
        `Stay with it. Give ${usualVolume(settings).text} about a minute, then bursts of 20 to 30 seconds, and stir after each: the middle can be far hotter than the skin on top, and spits when you break through. Never put a tight lid on. Metallic flake and foil can spark. Use heat-proof glass or silicone with a handle and without a crack, never paper or a food tub. The oven breathes out what the cup gives off, so it stands under the hood.`,
    },
    {
      id: 'heater',
      name: 'No open flame',
      text: 'Heat with electricity, never over a flame. That goes for whatever warms the room, too: the vapour can burn, and a fan that pulls air out of the room pulls a stove’s carbon monoxide in.',
    },
    {
      id: 'injector',
      name: 'Injector',
      text: 'Hot plastic under pressure comes back at you, out of the gate or wherever the mold gapes. Clamp the mold, point the injector away from everybody, push slowly, and never have your face above it.',
    },
    {
      id: 'water',
      name: 'Water',
      short: 'No water near hot plastic or in a mold.',
      text: 'Keep water, wet hands and wet molds away: a drop of water in hot plastic flashes to steam and throws the plastic about. Dry and warm the mold before you pour.',
    },
  ],
};

const STUFF: CautionGroup = {
  title: 'What you work with',
  cautions: [
    {
      id: 'dust',
      name: 'Dust',
      text: 'Pearl, white, fluorescent powder and ground salt don’t belong in your lungs. Wet them with a little softener or plastic before you stir them in, or wear a P2 or N95 mask. Keep the fan off the spoon, and wipe up with a damp cloth, far from the hot cup.',
    },
    {
      id: 'unknown',
      name: 'Baits you don’t know',
      text: 'Don’t melt down baits that you don’t know. Old ones may have lead in their colours, and some are another plastic altogether.',
    },
    {
      id: 'food',
      name: 'Food',
      short: 'Never use this gear for food again.',
      text: 'Buy cups, spoons, scale and microwave oven for the bench, and never use them for food again. Don’t eat, drink or smoke there, and wash your hands after.',
    },
    {
      id: 'storage',
      name: 'Storage',
      text: (settings) =>
        `Keep plastic and colours closed, at ${temperatureText(10, settings)} to ${temperatureText(25, settings)}, out of reach of children. Don’t keep baits in polystyrene or hard plastic boxes: one melts into the other. Don’t make baits that look like sweets.`,
    },
    {
      id: 'scrap',
      name: 'Scrap',
      text: 'Let scrap go cold, and put it where your local rules say. Never burn vinyl, and never pour plastic or colour down a drain. Leave no bait in the water.',
    },
    {
      id: 'law',
      name: 'Law and licence',
      short: 'Local codes and licensed practice override this book.',
      text: 'Local fire and workplace codes, the rules on fumes and waste, and licensed practice override anything written here.',
    },
  ],
};

/** All cautions, by subject. */
export const CAUTIONS: readonly CautionGroup[] = [ROOM, HEAT, STUFF];

/** The cautions in short, and what to do when it went wrong. */
export const SHORT_CAUTIONS: readonly string[] = [
  ...CAUTIONS.flatMap(({ cautions }) => cautions.flatMap(({ short }) => short ?? [])),
  SMOKING_LINE,
  BURNT_LINE,
];
