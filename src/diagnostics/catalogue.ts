/**
 * Every code that a diagnostic may have, with what it means. `examples.ts` has a file that provokes it and the same file mended.
 *
 * @packageDocumentation
 */

interface CatalogueEntry {
  readonly severity: 'error' | 'warning';
  readonly meaning: string;
}

const error = (meaning: string): CatalogueEntry => ({ severity: 'error', meaning });
const warning = (meaning: string): CatalogueEntry => ({ severity: 'warning', meaning });

export const CATALOGUE = {
  'file/name': error('A file name cannot be an id: it has capitals, spaces or signs.'),
  'file/too-large': error('A text is too long, or nested too deep, to be a recipe.'),
  'file/not-text': error(
    'A file is not plain text of its own: it is damaged, in another encoding, a link, or may not be read.',
  ),
  'file/unknown-place': warning('A file lies in a folder that the book does not know, and is not read.'),
  'file/wrong-folder': error('A file lies in the folder of one kind of thing, and its fields are those of another.'),
  'file/extension': warning('A file in a folder of the book has a name that the book does not read.'),
  'file/not-portable': warning(
    'A file name that Windows cannot hold, or that differs from another in nothing but capitals.',
  ),
  'file/same-name': error('Two materials of the shelf have the same name, so that a recipe could mean either.'),
  'file/same-title': warning('Two things of one kind have the same title, so that a reader cannot tell them apart.'),
  'file/quoted-title': warning('A title is in curly quotes, which the page would show.'),
  'file/unseen-sign': error('A text holds a sign that nobody sees, or that turns the letters beside it round.'),
  'file/not-computed': error('A file holds numbers that only together are beyond what can be computed.'),
  'front-matter/missing': error('A file has no front matter, or its front matter has no end.'),
  'front-matter/language': error('The front matter is marked as something other than YAML.'),
  'front-matter/syntax': error('The front matter is not YAML.'),
  'front-matter/alias': error('The front matter refers to itself with an alias.'),
  'field/unknown': error('A field has a name that the book does not know.'),
  'field/missing': error('A field that must be there is not.'),
  'field/type': error('A field holds another kind of value than it must.'),
  'field/value': error('A field holds a word that is not among those allowed.'),
  'field/quantity': error(
    'An amount has no number, no unit, a unit that does not fit, or is beyond anything at a bench.',
  ),
  'field/too-long': error('A text, or a list of cups, is longer than any book has.'),
  'field/colour': error('A colour is not written as # and six digits or letters a to f, in quotes.'),
  'field/date': error('A date is not a day of the calendar.'),
  'field/to-fill-in': warning(
    'A field is still empty: its file, and what needs that, is left out of the book until then.',
  ),
  'field/waits-for': warning('A file needs one that is still to be filled in, and is left out of the book until then.'),
  'field/day-to-come': warning('A recipe or chip was made on a day that is still to come.'),
  'book/missing': error('The folder has no `book.md`.'),
  'book/no-plastic': error('The shelf has no plastic, so that no cup can be computed.'),
  'book/unknown-plastic': error('`book.md` names a plastic that is not on the shelf.'),
  'book/left-in-cup': error('What stays in a cup is as much as a cup is filled with, so that nothing could be poured.'),
  'book/measuring-card': error('What the book says of its measuring card cannot be what was printed.'),
  'book/injector': error('As much stays in the injector as it holds, so that nothing could be shot.'),
  'recipe/unknown-material': error('A cup holds a material that is not on the shelf.'),
  'recipe/unknown-plastic': error('A cup holds a plastic that is not on the shelf.'),
  'recipe/unknown-mold': error('A recipe or target names a mold that has no file.'),
  'recipe/unknown-recipe': error('A recipe or cup comes from a recipe that has no file.'),
  'recipe/unknown-cup': error('A cup comes from a cup that its recipe does not have.'),
  'recipe/unknown-target': error('A recipe is for a target that has no file.'),
  'recipe/no-part': warning('A recipe has a target, and its cups do not have the names of its parts.'),
  'recipe/no-cups': error('A recipe has no cup and comes from no other recipe.'),
  'recipe/no-plastic': error('A cup does not say how much plastic it starts with.'),
  'recipe/begun-anew': warning(
    'A cup of a derived recipe has plastic of its own, and shares almost nothing with the cup of that name in its parent.',
  ),
  'recipe/add-and-log': error('A cup is given both as amounts and as rounds.'),
  'recipe/pattern': error('The number of cups does not fit the pattern.'),
  'recipe/order': warning('A bait with a core does not say which of its cups is shot first, or another bait does.'),
  'recipe/shares': error('The shares of the cups are not 100 % together.'),
  'recipe/uneven-shares': warning(
    'The sides of an injected laminate are not equal, as two injectors of one bore make them.',
  ),
  'recipe/cycle': error('Recipes come from each other in a ring.'),
  'recipe/over-poured': error('More is poured than is left in the cup.'),
  'recipe/empty-cup': error('Something is added to a cup that was poured empty.'),
  'recipe/not-in-cup': error('`set` or `without` names a material that the cup it comes from does not hold.'),
  'recipe/wrong-measure': error('A material is measured in a way that it cannot be, such as drops of a powder.'),
  'recipe/plastic-as-material': error('A plastic is listed among the materials that are added.'),
  'recipe/overloaded': warning('A cup holds more of a material than its file, or a cup of plastic, allows.'),
  'recipe/too-much-together': warning(
    'A cup holds more liquid colour, powder, flake, salt or softener together than cups usually do.',
  ),
  'recipe/more-than-plastic': error('A cup holds more of other things than of plastic.'),
  'recipe/large-flake': warning('A flake is too large for the gate or the thin part of the mold.'),
  'recipe/over-full': warning('A cup is filled further than the book allows.'),
  'recipe/too-hot': warning('A cup was heated above the limit of something in it.'),
  'recipe/burnt': warning('A cup was heated until its plastic broke down.'),
  'recipe/worn': warning('A material of a cup was heated more often than it bears.'),
  'recipe/held-long': warning('A cup was held hot for longer than plastic bears.'),
  'recipe/heat-scale': error('A cup was heated to more than any cup is, and the number fits in the other scale.'),
  'recipe/too-cold': warning('A cup was heated to less than plastic runs at, and the number fits in the other scale.'),
  'recipe/no-range': warning('What is in a cup cannot be poured at one temperature.'),
  'material/look-incomplete': error('A look lacks a field that its kind needs.'),
  'material/chip': error('A chip cannot be: it is darker over white than over black.'),
  'material/heat': warning('A material is said to take more heat than any cup reaches, or less than hot plastic has.'),
  'plastic/heat': error('A plastic has a temperature at which none is poured, or that none can take.'),
  'plastic/hot': warning('A plastic is poured hotter than most, or said to take more than most.'),
  'plastic/cold': warning('A plastic is poured colder than most.'),
  'plastic/range': error('A plastic could never be poured: its range is reversed, or above its highest.'),
  'material/pack': warning('A price without the size of its pack says nothing about the cost of a bait.'),
  'material/cut': error(
    'A cut is of a colorant that is not there or is cut itself, or is cut with what can’t carry a colour.',
  ),
  'material/cut-beside': error('A file says of a cut what only the files of its two parts can say.'),
  'material/not-measured': error(
    'A material says that it was measured, but no film in `shelf/measurements.csv` holds it.',
  ),
  'shelf/measurements': error('The table of measured films cannot be read, or holds a material that it may not.'),
  'shelf/film': warning('A measured film cannot be, or does not agree with the others.'),
  'mold/no-volume': error('A mold gives neither the volume of a cavity nor the mass of a bait.'),
  'mold/two-volumes': warning('A mold gives both the volume of a cavity and the mass of a bait; the cavity counts.'),
  'mold/thickness': error('A mold is thicker in its thin part than in its body.'),
  'mold/gate': warning('The gate of a mold is far wider than the body of its bait.'),
  'mold/length': warning('A bait as long and as thick as the mold says does not have its volume.'),
  'target/no-colour': error('A target says neither how it is seen over white nor its parts.'),
  'target/flake-beside-parts': error(
    'A target with parts has flake beside them, and nobody knows in which part it lies.',
  ),
  'target/unknown-plastic': error('A target names a plastic that is not on the shelf.'),
  'target/unlike-sides': warning(
    'Two parts of a target let through such different amounts of light that they can’t be the sides of one bait.',
  ),
  'seen/reversed': error('What was seen cannot be: it is lighter over black than over white.'),
  'seen/unlogged': warning('A cup looks different from the last time, and the log has nothing that went in since.'),
  'log/does-not-fit': warning('A look does not fit what the log of its cup says.'),
  'seen/unknown-cup': error('A look at a finished bait names a cup that its recipe does not have.'),
  'seen/unknown-round': error('A look at a finished bait names a round that the log of its cup does not have.'),
  'material/deep': warning('The look of a material is as good as black, and tells nothing of how strong it is.'),
  'chip/deep': warning('A chip is as good as black, and tells nothing of how strong its bottles are.'),
  'chip/unseen': warning('A chip has no colour that was seen, and teaches nothing.'),
  'chip/seen-and-log': error('A chip says what was seen beside its log, and nobody can tell after which step.'),
  'photo/missing': error('A photo that a file names is not in `photos/`.'),
  'photo/unreadable': error('A photo that a file names is not a JPEG, PNG or WebP picture that can be shown.'),
  'photo/unused': warning('A photo is named by no file, and is not published.'),
  'publish/named': error('A published file names a recipe or target that is not published.'),
  'publish/word': warning('A published file holds words that may be the name of what is not published.'),
} as const satisfies Record<string, CatalogueEntry>;

/** Every code that a diagnostic may have. */
export type DiagnosticCode = keyof typeof CATALOGUE;
