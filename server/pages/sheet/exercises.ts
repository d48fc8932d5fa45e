/** What a pupil writes: bars with a sign, an empty stave beneath, and the answer folded away. */
import { type Html, tag, text } from '../html';
import type { PictureWish } from '../svg';
import type { Figures } from './figures';
import { MM_PER_UNIT, withoutNotes } from './inline';
import { type SignPlace, signWish, type TaughtSign, whereOf } from './taught';

/** A stave to write on by hand is so much larger than one to read. */
const BY_HAND = 1.7;

export function exercise({ typed, id, places }: TaughtSign, figures: Figures): Html {
  const place = lastPlayed(places);
  if (place === undefined) return '';
  const { text: sheetText, bar, piece, sign } = place;
  const where = whereOf(place);
  const wish = signWish(place);
  const written = asWritten(place, wish, figures);
  const answer = sheetText.performed.pieces[piece];
  const answered = answer && figures.svg({ ...sheetText.performed, pieces: [answer] }, wish);
  if (written === '' || answered === undefined) return '';
  const blank = figures.inline(withoutNotes(answered), BY_HAND * MM_PER_UNIT);
  const heading = `exercise-${id}`;
  const after = `${sheetText.name} plays here, after ${sign.table}`;
  return tag(
    'section',
    { class: 'exercise', 'aria-labelledby': heading },
    tag('h3', { id: heading }, text(`${typed}, ${where}`)),
    tag('p', {}, text(`Write out what ${after}.`)),
    written,
    figures.figure(blank, { caption: 'Yours', label: `an empty stave for ${where}`, kind: 'blank' }),
    tag(
      'details',
      {},
      tag('summary', {}, 'The answer'),
      figures.figure(
        figures.inline(answered, MM_PER_UNIT),
        { caption: text(`As ${after}`), label: `${where}, the answer` },
        sheetText.asPlayed.in(piece, [bar, bar], place.voice),
      ),
    ),
  );
}

/** Where the first reading plays the sign last, for its first place is explained. */
const lastPlayed = (places: TaughtSign['places']): SignPlace | undefined =>
  places.findLast((one) => one.text === places[0].text && one.sign.notes.length > 0);

function asWritten(place: SignPlace, wish: PictureWish, figures: Figures): Html {
  const { bar, piece, voice } = place;
  const { score, literally } = place.text;
  const own = score.pieces[piece];
  const picture = own && figures.draw({ ...score, pieces: [own] }, wish);
  if (picture === undefined) return '';
  const words = { caption: 'As written', label: `${whereOf(place)}, as written` };
  return figures.figure(picture, words, literally.in(piece, [bar, bar], voice));
}
