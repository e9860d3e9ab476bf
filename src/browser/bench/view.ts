/**
 * What the bench page shows of a match: markup from values, nothing else.
 *
 * @packageDocumentation
 */
import { concentrations, total } from '../../cup/ledger.ts';
import type { FirstRecipe } from '../../matching/first-recipe.ts';
import type { NextAddition } from '../../matching/next-addition.ts';
import { limitOf, type PredictedColour, type Proposal } from '../../matching/proposal.ts';
import type { RecipeProposal } from '../../matching/recipe-proposal.ts';
import { type Html, html } from '../../render/html.ts';
import type { BenchPageData, BenchPageMaterial } from '../../render/pages/bench.ts';
import { type ChipColours, chips } from '../../render/swatch/chip.ts';
import { deltaEText, moneyText, perHundred, sentence, temperatureText, volumeText } from '../../render/words.ts';
import type { CupNow, Work, WorkSide, WorkStep } from './work.ts';

/** The shelf by names, and how the book shows amounts. */
export interface BenchShown {
  readonly data: BenchPageData;
  readonly materials: ReadonlyMap<string, BenchPageMaterial>;
}

/** What was typed for a round and is not noted yet. */
export interface RoundDraft {
  readonly pour?: string;
  readonly overWhite?: string;
  readonly overBlack?: string;
  readonly sawWhite?: boolean;
  readonly sawBlack?: boolean;
  readonly note?: string;
}

const titleIn = ({ materials }: BenchShown, id: string): string => materials.get(id)?.title ?? id;

/** A colour to be chosen, by the eye or by its digits. */
function colourField(id: string, name: string, label: string, value: string): Html {
  return html`<p class="colour-field"><label for="${id}">${label}</label><input id="${id}" type="color" name="${name}" value="${value}"><input type="text" aria-label="${label}, as # and six digits" data-hex-of="${id}" value="${value}" maxlength="7" spellcheck="false" autocomplete="off" pattern="#[0-9a-fA-F]{6}"></p>`;
}

/** The colours of a target, to be described. */
export function sidesView({ sides }: Work): Html {
  const many = sides.length > 1;
  return html`${sides.map(({ name, overWhite, overBlack, thicknessMm }, index) => {
    const id = `side-${index}`;
    return html`<fieldset class="bench-side" data-side="${index}"><legend>${many ? sentence(name) : 'Its colour'}</legend>
${many ? html`<p class="field wide"><label for="${id}-name">Name of the cup</label><input id="${id}-name" type="text" name="name" value="${name}" maxlength="40" autocomplete="off"></p>` : ''}
<div class="bench-pair">${chips([{ overWhite, ...(overBlack === undefined ? {} : { overBlack }) }], '')}</div>
${colourField(`${id}-white`, 'overWhite', 'Over white', overWhite)}
<p class="check"><input id="${id}-saw" type="checkbox" name="sawBlack"${overBlack === undefined ? '' : html` checked`}><label for="${id}-saw">Seen over black too: without that, nothing can be said of its thickness</label></p>
${overBlack === undefined ? '' : colourField(`${id}-black`, 'overBlack', 'Over black', overBlack)}
<p class="field"><label for="${id}-mm">Seen at mm</label><input id="${id}-mm" type="number" inputmode="decimal" name="thicknessMm" min="0.1" max="200" step="any" value="${thicknessMm}"></p></fieldset>`;
  })}`;
}

/** First recipes, each with a button that begins with it. */
export function firstView(
  answers: readonly { readonly part: string; readonly recipe: FirstRecipe }[],
  sides: readonly WorkSide[],
  shown: BenchShown,
): Html {
  return html`${answers.map(({ part, recipe }, answer) => {
    const { proposals, sentence: says, flakes, leftOut } = recipe;
    return html`<div class="bench-answer">${answers.length > 1 ? html`<h3>${sentence(part)}</h3>` : ''}${saysMore(recipe) ? html`<p>${says}</p>` : ''}${
      proposals.length === 0
        ? ''
        : html`<ol class="bench-proposals">${proposals.map((proposal, index) => recipeItem(proposal, sides, shown, html`<button type="button" data-use="${answer}" data-proposal="${index}">Use this${answers.length > 1 ? ` for ${part}` : ''}</button>`))}</ol>`
    }${flakes.map(({ title, words }) => html`<p class="fine">Flake: ${title}, ${words}.</p>`)}${leftOutView(leftOut, shown)}</div>`;
  })}`;
}

/** Whether an answer says more than its first proposal does. */
function saysMore({ advice, proposals }: FirstRecipe): boolean {
  return advice !== 'make' || proposals[0]?.sides.some(({ left }) => !left.within) !== false;
}

/** A verdict with its size, which one within tolerance tells itself. */
function judged({ within, deltaE, sentence: words }: Proposal['left']): Html {
  return within ? html`<b>${sentence(words)}</b>` : html`<b>ΔE ${deltaEText(deltaE)}</b> ${sentence(words)}`;
}

function recipeItem(
  { cups, sides: predicted, deltaEUnderA, cost, limit }: RecipeProposal,
  sides: readonly WorkSide[],
  shown: BenchShown,
  button: Html,
): Html {
  const { settings } = shown.data;
  return html`<li>${predicted.map(({ name, overWhite, overBlack, left }) => {
    const side = sides.find((each) => each.name === name) ?? sides[0]!;
    return comparison(
      side,
      overWhite,
      overBlack,
      `${predicted.length > 1 ? `${name}: ` : ''}target on the left, predicted on the right`,
      html`<p>${judged(left)}.</p>`,
    );
  })}${cups.map(
    ({ name, plastic, plasticMl, amounts, alone }) =>
      html`<div class="bench-amounts">${cups.length > 1 ? html`<h3>${sentence(name)}</h3>` : ''}<ul><li>${volumeText(plasticMl, settings)} <span>${titleIn(shown, plastic)}</span></li>${amounts.map(({ text, title }) => html`<li><b>${text}</b> <span>${title}</span></li>`)}</ul>${cups.length > 1 ? html`<p class="fine">Poured by itself it should be ${alone.overWhite.hex} over white and ${alone.overBlack.hex} over black.</p>` : ''}</div>`,
  )}<p class="fine">Under a lamp ΔE ${deltaEText(deltaEUnderA)}; ${moneyText(cost, settings)}${limitWords(limit, shown)}.</p>${button}</li>`;
}

/** The target beside another colour. */
function comparison(
  side: ChipColours,
  overWhite: PredictedColour,
  overBlack: PredictedColour | undefined,
  label: string,
  words: Html,
): Html {
  const other = { overWhite: overWhite.hex, ...(overBlack && { overBlack: overBlack.hex }) };
  return html`<div class="bench-compared"><div class="bench-pair">${chips([coloursOf(side), other], `${sentence(label)}; over white above, over black below`)}</div><div>${words}</div></div>`;
}

function coloursOf({ overWhite, overBlack }: ChipColours): ChipColours {
  return { ...(overWhite && { overWhite }), ...(overBlack && { overBlack }) };
}

function limitWords(
  limit: { readonly celsius: number; readonly material: string } | undefined,
  shown: BenchShown,
): string {
  return limit === undefined
    ? ''
    : `; not above ${temperatureText(limit.celsius, shown.data.settings)}, for ${titleIn(shown, limit.material)}`;
}

function leftOutView(leftOut: readonly { readonly material: string; readonly why: string }[], shown: BenchShown): Html {
  return leftOut.length === 0
    ? html``
    : html`<p class="fine">${leftOut.map(({ material, why }) => `${titleIn(shown, material)} is left out: ${why}. `)}</p>`;
}

/** What a cup is like now, and what to do with it. */
export function adviceView(side: WorkSide, now: CupNow, next: NextAddition, shown: BenchShown): Html {
  const { now: verdict, sentence: says, proposals, startAgain, leftOut } = next;
  const last = now.seen ? 'seen' : 'predicted';
  return html`${
    verdict
      ? html`<p class="bench-verdict">${judged(verdict)}.${now.seen ? '' : ' So the model says: pour a bait and look.'}</p>`
      : ''
  }<p class="bench-next" data-advice="${next.advice}" data-basis="${last}">${says}</p>${
    proposals.length === 0
      ? ''
      : html`<ol class="bench-proposals">${proposals.map((proposal, index) => proposalItem(proposal, index, side, shown))}</ol>`
  }${
    startAgain
      ? html`<h3>Or a new cup</h3><ol class="bench-proposals">${recipeItem(startAgain, [side], shown, html`<button class="quiet" type="button" data-afresh>Begin this cup anew with it</button>`)}</ol>`
      : ''
  }${leftOutView(leftOut, shown)}`;
}

function proposalItem(
  { sentence: what, overWhite, overBlack, left, volumeMl, cost, limit }: Proposal,
  index: number,
  side: WorkSide,
  shown: BenchShown,
): Html {
  const { settings } = shown.data;
  const words = html`<p><b>${what}</b></p><p>${left.within ? `Leaves it ${left.sentence}` : `Leaves ΔE ${deltaEText(left.deltaE)}: ${left.sentence}`}.</p><p class="fine">${volumeText(volumeMl, settings)} in the cup, ${moneyText(cost, settings)}${limit?.lowered ? limitWords(limit, shown) : ''}.</p>`;
  return html`<li>${comparison(side, overWhite, overBlack, 'target on the left, predicted on the right', words)}<button type="button" data-take="${index}">I added this</button></li>`;
}

/** The forms of a cup: a test pour with what was seen, and anything else that was added. */
export function roundForms(index: number, draft: RoundDraft, side: WorkSide, shown: BenchShown): Html {
  const id = `cup-${index}`;
  const materials = shown.data.materials.filter(({ kind }) => kind !== 'plastic');
  const {
    overWhite = side.overWhite,
    overBlack = side.overBlack ?? '#303030',
    sawWhite = true,
    sawBlack = side.overBlack !== undefined,
  } = draft;
  return html`<fieldset class="bench-round" data-round><legend>A test pour</legend>
<p class="field"><label for="${id}-pour">Poured, ml</label><input id="${id}-pour" type="number" inputmode="decimal" name="pour" min="0" step="any" value="${draft.pour ?? ''}"></p>
<p class="check"><input id="${id}-saw-white" type="checkbox" name="sawWhite"${sawWhite ? html` checked` : ''}><label for="${id}-saw-white">Looked at it over white</label></p>
${sawWhite ? colourField(`${id}-white`, 'overWhite', 'Seen over white', overWhite) : ''}
<p class="check"><input id="${id}-saw-black" type="checkbox" name="sawBlack"${sawBlack ? html` checked` : ''}><label for="${id}-saw-black">Looked at it over black</label></p>
${sawBlack ? colourField(`${id}-black`, 'overBlack', 'Seen over black', overBlack) : ''}
<p class="field wide"><label for="${id}-note">Note</label><input id="${id}-note" type="text" name="note" maxlength="300" autocomplete="off" value="${draft.note ?? ''}"></p>
<p class="bench-buttons"><button type="button" data-note-round>Note this round</button></p></fieldset>
<details class="bench-else"><summary>Something else went in</summary><div class="bench-fields">
<p class="field wide"><label for="${id}-material">Material</label><select id="${id}-material" name="material">${materials.map(({ id: material, title }) => html`<option value="${material}">${title}</option>`)}</select></p>
<p class="field"><label for="${id}-amount">Amount</label><input id="${id}-amount" type="text" name="amount" placeholder="3 drops" autocomplete="off"></p>
<p class="bench-buttons"><button class="quiet" type="button" data-add-else>Put it in the log</button></p>
<p class="field"><label for="${id}-plastic">Plastic, ml</label><input id="${id}-plastic" type="number" inputmode="decimal" name="plastic" min="0" step="any"></p>
<p class="bench-buttons"><button class="quiet" type="button" data-add-plastic>Put it in the log</button></p></div></details>`;
}

/** The log of a cup, and what is in it. */
export function logView(
  steps: readonly WorkStep[],
  { cup, volumeMl }: Pick<CupNow, 'cup' | 'volumeMl'>,
  shown: BenchShown,
): Html {
  const { settings } = shown.data;
  const limit = limitOf(cup, shown.materials);
  const inside = Object.entries(concentrations(cup)).map(
    ([id, gramsPerMl]) =>
      html`<li>${titleIn(shown, id)} <span class="fine">${perHundred({ gramsPerMl }, shown.materials.get(id))} in 100 ml</span></li>`,
  );
  return html`<div class="bench-log"><h3>The log</h3>${
    steps.length === 0
      ? html`<p>Plain plastic.</p>`
      : html`<ol>${steps.map((step) => html`<li>${stepWords(step, shown)}</li>`)}</ol><p class="bench-buttons"><button class="quiet" type="button" data-undo>Take back the last line</button></p>`
  }<h3>Really in the cup</h3><p>${volumeText(volumeMl, settings)}${total(cup.plastics) > 1e-6 ? '' : ': it is empty'}.${limit ? ` Not above ${temperatureText(limit.celsius, settings)}, for ${titleIn(shown, limit.material)}.` : ''}</p>${inside.length === 0 ? '' : html`<ul class="bench-inside">${inside}</ul>`}</div>`;
}

function stepWords(step: WorkStep, shown: BenchShown): Html {
  const { settings } = shown.data;
  switch (step.do) {
    case 'add':
      return html`Added ${step.amounts.map(({ material, dose }, index) => html`${index > 0 ? ', ' : ''}${titleIn(shown, material)} ${dose}`)}`;
    case 'plastic':
      return html`Added ${volumeText(step.ml, settings)} of plastic`;
    case 'pour':
      return html`Poured ${volumeText(step.ml, settings)}`;
    case 'see':
      return html`Saw ${step.overWhite ? `${step.overWhite} over white` : ''}${step.overWhite && step.overBlack ? ', ' : ''}${step.overBlack ? `${step.overBlack} over black` : ''}${step.note ? html` <span class="said">“${step.note}”</span>` : ''}`;
  }
}
