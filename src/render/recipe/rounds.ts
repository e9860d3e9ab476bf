import type { Change, Cup, Round } from '../../book/model/cup.ts';
import type { CupLook } from '../../book/model/looks.ts';
import type { Recipe } from '../../book/model/recipe.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';
import { cupHeatsText, heldText, roundHeatText } from '../../words/heats.ts';
import { bookIndex } from '../book-index.ts';
import { massIn } from '../dose-text.ts';
import { doubtedLookView } from '../doubted-look.ts';
import { type Html, html, joined } from '../html.ts';
import { link, paths } from '../links.ts';
import { lookWords } from '../look-words.ts';
import type { PageContext } from '../page.ts';
import { photoFigure } from '../photo.ts';
import { chipColours, chips, chipWords, columnWords } from '../swatch/chip.ts';
import { deltaEText, differenceWords, listText, massText, sentence, temperatureText, volumeText } from '../words.ts';
import { inFold } from './fold.ts';

type Titles = (material: string) => string;

/** Whose round it is. */
interface Logged {
  readonly recipe: string;
  readonly cup: string;
  readonly titles: Titles;
}

/** A change of colour in words, with its size. */
export function changeText({ words, deltaE }: Pick<Change, 'words' | 'deltaE'>): string {
  return words.length === 0
    ? `no visible change (ΔE ${deltaEText(deltaE)})`
    : `${listText(words)} (ΔE ${deltaEText(deltaE)})`;
}

/** A look beside what the book has of it, that look and all others taken together: drawn, and in words. */
function lookBeside(
  context: PageContext,
  round: Round,
  look: CupLook,
): { readonly drawn: Html; readonly facts: string } {
  const { overWhite, overBlack, predicted = round.look, missedBy } = look;
  const seen = { ...(overWhite && { overWhite: overWhite.hex }), ...(overBlack && { overBlack: overBlack.hex }) };
  const how = lookWords(look, context.book.settings);
  if (missedBy === undefined) return { drawn: alone(round), facts: how };
  const parts = [
    ...(missedBy.overWhite === undefined ? [] : [`${deltaEText(missedBy.overWhite)} over white`]),
    ...(missedBy.overBlack === undefined ? [] : [`${deltaEText(missedBy.overBlack)} over black`]),
  ];
  const words = differenceWords(Math.max(missedBy.overWhite ?? 0, missedBy.overBlack ?? 0));
  return {
    drawn: html`<div class="round-chips"><div class="pair">${chips([chipColours(predicted), seen], `Round ${round.number}`, ['in this book', 'seen'])}</div>${wordsOf(round)('in this book', 'seen')}</div>`,
    facts: [how, `Against what this book has learned from all looks: ${words} (ΔE ${parts.join(', ')}).`]
      .filter((each) => each !== '')
      .join(' '),
  };
}

/** What the book has of a round of which no colour was noted. */
function alone(round: Round): Html {
  const { number, look } = round;
  const label = `Round ${number} as this book has it, over white above and over black below`;
  return html`<div class="round-chips"><div class="single">${chips([chipColours(look)], label)}</div>${wordsOf(round)('in this book')}</div>`;
}

/** Rows of chips are named at the first round of a cup. */
function wordsOf({ number }: Round): typeof chipWords {
  return number === 1 ? chipWords : columnWords;
}

function said({ note }: CupLook): Html {
  return note === undefined ? html`` : html`<p class="said">“${note}”</p>`;
}

function photoOf(context: PageContext, { number }: Round, { photo }: CupLook): Html {
  return photo === undefined ? html`` : photoFigure(context, photo, `Test bait of round ${number}`);
}

function roundItem(context: PageContext, { recipe, cup: cupName, titles }: Logged, round: Round): Html {
  const { settings } = context.book;
  const { number, added, plasticAddedMl, pouredMl, note, change, volumeMl, leftMl } = round;
  const [judged, ...others] = round.seen;
  const begun =
    round.newCup === undefined
      ? ''
      : html`<p>A new cup, started with ${volumeText(round.newCup.plasticMl, settings)} of plastic.${pouredAwayWords(round.newCup.pouredAwayMl, settings)}</p>`;
  const additions = [
    ...(plasticAddedMl > 0 ? [html`${volumeText(plasticAddedMl, settings)} of plastic`] : []),
    ...added.map(
      ({ material, dose, grams }) => html`${titles(material)} ${dose} <span class="fine">(${massText(grams)})</span>`,
    ),
  ];
  const heat = roundHeatText(round, settings);
  const cup =
    pouredMl > 0
      ? `${volumeText(pouredMl, settings)} of ${volumeText(volumeMl, settings)} poured, ${volumeText(leftMl, settings)} left.`
      : `${volumeText(volumeMl, settings)} in the cup.`;
  const spent = round.burnt
    ? html`<p><strong>Too hot: vinyl breaks down at this heat and gives off hydrogen chloride. This cup is spent.</strong> If it happens to you: <a href="${link(context, paths.firstAid('smoke'))}">leave the cup, switch off, get out</a>.</p>`
    : '';
  const beside = judged && lookBeside(context, round, judged);
  const facts = [
    cup,
    ...(heat === undefined ? [] : [heat]),
    ...(beside && beside.facts !== '' ? [beside.facts] : []),
  ].join(' ');
  const below = others.map((look) => {
    const { drawn, facts: words } = lookBeside(context, round, look);
    return html`${drawn}<div class="round-words">${said(look)}${words === '' ? '' : html`<p class="fine">${words}</p>`}${photoOf(context, round, look)}</div>`;
  });
  return html`<li class="round">${beside?.drawn ?? alone(round)}<div class="round-words"><h5>Round ${number}${change === undefined ? '' : html` <span class="round-change">${changeText(change)}</span>`}</h5>${begun}${
    additions.length === 0 ? '' : html`<p>Added ${joined(additions)}.</p>`
  }${judged === undefined ? '' : said(judged)}${note === undefined ? '' : html`<p class="said">${note}</p>`}<p class="fine">${facts}</p>${doubtedLookView(context, { of: 'recipe', id: recipe, at: { cup: cupName, round: number } })}${spent}${judged === undefined ? '' : photoOf(context, round, judged)}</div>${below}</li>`;
}

function pouredAwayWords(ml: number, settings: VolumeUnit): string {
  return ml > 0 ? ` The ${volumeText(ml, settings)} left in the last one was poured away.` : '';
}

/** What is in a cup after its log, and how far the sum of the notes is from it. */
function ledger(cup: Cup, titles: Titles, context: PageContext): Html {
  const { naive, leftMl, highestReached, heats } = cup;
  const { settings } = context.book;
  const history = [
    ...(leftMl === undefined ? [] : [`${volumeText(leftMl, settings)} left`]),
    ...(highestReached === undefined ? [] : [`hottest ${temperatureText(highestReached, settings)}`]),
    ...(heats.heldMinutes === undefined ? [] : [heldText(heats.heldMinutes, settings)]),
  ].join(', ');
  const { materials } = bookIndex(context.book);
  const heated = sentence(cupHeatsText(heats, (id) => materials.get(id)));
  const anew = heats.heats > 1 ? ' A fresh cup starts at its first.' : '';
  const said = [...(history === '' ? [] : [`${sentence(history)}.`]), `${heated}.${anew}`].join(' ');
  if (naive === undefined) return html`<p>${said}</p>`;
  const rows = cup.contents.map(({ material, gramsPerMl }) => {
    const sum = naive.contents.find((content) => content.material === material)?.gramsPerMl ?? 0;
    const off = gramsPerMl > 0 ? Math.round((sum / gramsPerMl - 1) * 100) : 0;
    return html`<tr><th scope="row">${titles(material)}</th><td>${massIn({ gramsPerMl }, settings)}</td><td>${massIn({ gramsPerMl: sum }, settings)}</td><td>${off === 0 ? 'the same' : `${off > 0 ? '+' : '−'}${Math.abs(off)} %`}</td></tr>`;
  });
  return html`<div class="ledger"><p>${said} Every test pour took colour away with it, so later additions went into less plastic. ${
    naive.words.length === 0
      ? `Just adding up the notes would give nearly the same (ΔE ${deltaEText(naive.deltaE)}).`
      : `Just adding up the notes would make it ${listText(naive.words)} (ΔE ${deltaEText(naive.deltaE)}).`
  }</p><details><summary>What is in the cup, and the notes added up</summary><div class="scroll"><table><thead><tr><th scope="col">Per ${usualVolume(settings).text}</th><th scope="col">Really in the cup</th><th scope="col">Notes added up</th><th scope="col">Off by</th></tr></thead><tbody>${rows}</tbody></table></div></details></div>`;
}

/** The rounds of every cup that has a log; nothing where none has. */
export function roundsSection(context: PageContext, { id, cups }: Pick<Recipe, 'id' | 'cups'>, titles: Titles): Html {
  const logged = cups.filter(({ rounds }) => rounds.length > 0);
  if (logged.length === 0) return html``;
  return inFold(
    'rounds',
    'How it was found',
    html`${logged.map(
      (cup) =>
        html`<div class="log"><h4>${sentence(cup.name)}</h4><ol class="rounds">${cup.rounds.map((round) => roundItem(context, { recipe: id, cup: cup.name, titles }, round))}</ol>${ledger(cup, titles, context)}</div>`,
    )}`,
  );
}
