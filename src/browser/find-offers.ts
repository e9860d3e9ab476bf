import { type Html, html } from '../render/html.ts';
import { nearWords, strangeWords } from './near-words.ts';
import { isNarrowed, type Question, queryOf } from './question.ts';
import { wordsAndPhrases } from './small-words.ts';

/** Another question that finds something, and what it changes. */
export interface Offer {
  readonly says: string;
  readonly question: Question;
  readonly found: number;
}

type Count = (question: Question) => Promise<number>;

/** Words as they were likely meant. A word of the notes is in no list of words, so the search is asked whether it has it. */
async function wordsMeant(words: string, vocabulary: ReadonlySet<string>, count: Count): Promise<string | undefined> {
  const known = await Promise.all(
    strangeWords(words, vocabulary).map(async (word) =>
      (await count({ words: `"${word}"`, filters: {} })) > 0 ? [word] : [],
    ),
  );
  return nearWords(words, new Set([...vocabulary, ...known.flat()]));
}

/**
 * What to ask instead: near words, and where nothing was found also one word less, no filters, or everything in the book. Only what
 * finds something is offered.
 *
 * @param found how much the question itself has found
 * @param count how much a question finds
 */
export async function offersInstead(
  question: Question,
  found: number,
  vocabulary: ReadonlySet<string>,
  count: Count,
): Promise<readonly Offer[]> {
  const { words } = question;
  const meant = await wordsMeant(words, vocabulary, count);
  const near: readonly Omit<Offer, 'found'>[] =
    meant === undefined ? [] : [{ says: `Look for “${meant}”`, question: { ...question, words: meant } }];
  const asked: readonly Omit<Offer, 'found'>[] = [...near, ...(found > 0 ? [] : elsewhere(question, meant))];
  const counted = await Promise.all(asked.map(async (offer) => ({ ...offer, found: await count(offer.question) })));
  return counted.filter((offer) => offer.found > 0);
}

/** The same with one word less, without filters, or among everything. */
function elsewhere(question: Question, meant: string | undefined): readonly Omit<Offer, 'found'>[] {
  const { words, filters } = question;
  const { kind } = filters;
  const ofKind: Question['filters'] = kind === undefined ? {} : { kind };
  return [
    ...oneWordLess(question),
    ...(isNarrowed(question)
      ? [
          { says: 'Remove the filters', question: { ...question, filters: ofKind } },
          ...(meant === undefined
            ? []
            : [
                {
                  says: `Look for “${meant}” without filters`,
                  question: { ...question, words: meant, filters: ofKind },
                },
              ]),
        ]
      : []),
    ...(kind === undefined || words === ''
      ? []
      : [{ says: 'Search everything', question: { ...question, filters: {} } }]),
  ];
}

// Each is a search of its own. Nobody types more words than this and means each.
const MOST_WORDS = 8;

/** The same without one of its words; words in quotes belong together. */
function oneWordLess(question: Question): readonly Omit<Offer, 'found'>[] {
  const all = [...new Set(wordsAndPhrases(question.words))];
  if (all.length < 2 || all.length > MOST_WORDS) return [];
  return all.map((word) => ({
    says: `Without “${word.replaceAll('"', '')}”`,
    question: { ...question, words: all.filter((other) => other !== word).join(' ') },
  }));
}

/** The offers as buttons that carry their question as an address would. */
export function offersView(offers: readonly Offer[]): Html {
  return offers.length === 0
    ? html``
    : html`<ul class="find-offers">${offers.map(
        ({ says, question, found }) =>
          html`<li><button class="quiet" type="button" data-ask="${queryOf(question)}">${says} (${found} found)</button></li>`,
      )}</ul>`;
}
