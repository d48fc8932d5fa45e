/** A tuner's sheet: a page to print and to lay on the instrument. */
import { printedNames } from '../score/pitchNames';
import { beatsInFigures, signed } from '../tuning/figures';
import { KEY_FIGURES, type KeyColour } from '../tuning/keyColours';
import type { SheetFifth, SheetInterval, SheetNote, SheetStep, TuningSheet } from '../tuning/sheet';
import { type Html, page, type TableColumn, table, tag, text } from './html';
import { STRINGS_STYLE, stringsDrawing } from './stringsDrawing';

/** The sheet as HTML in one file. */
export function tunersSheet(sheet: TuningSheet): string {
  const { title, pitch, note, cautions } = sheet;
  return page(
    `Tuner’s sheet: ${title}, a4 = ${pitch} Hz`,
    `${STYLE}${STRINGS_STYLE}`,
    tag('h1', {}, text(title)),
    tag('p', { class: 'under' }, text(`a4 = ${pitch} Hz${note === '' ? '' : `. ${note}`}`)),
    tag('section', { class: 'cautions', 'aria-label': 'Beware' }, ...cautions.map((one) => tag('p', {}, text(one)))),
    retuning(sheet),
    tag('h2', {}, 'Laying it by ear'),
    tag('p', {}, text(HOW_TO_READ)),
    stringsDrawing(sheet),
    table('From the fork, step by step; what proves it stands between', STEP_COLUMNS, numbered(sheet.steps)),
    tag('p', { class: 'after' }, text('Then the octaves from these notes, downwards and upwards, without beats.')),
    tag('h2', {}, 'The tuning in numbers'),
    tag(
      'div',
      { class: 'beside' },
      table('Notes, in cents and hertz (from c4)', NOTE_COLUMNS, sheet.notes),
      table('Fifths, distance from pure', FIFTH_COLUMNS, sheet.fifths),
      table('Major thirds, beats from f3 on', THIRD_COLUMNS, sheet.majorThirds),
    ),
    tag('h2', {}, 'Colour of the keys'),
    tag('p', {}, text(KEY_FIGURES)),
    tag(
      'div',
      { class: 'beside' },
      ...(['major', 'minor'] as const).map((mode) =>
        table(
          mode,
          KEY_COLUMNS,
          sheet.keys.filter((key) => key.mode === mode),
        ),
      ),
    ),
  );
}

const HOW_TO_READ =
  'Each line joins the string that is heard (open dot) to the one that is tuned (full dot), from the keyboard upwards; its number is its place in the order, at its end stand the beats a second. A whole line is pure, a broken one narrow, a dotted one wide; = is what the last interval must come to by itself. Under each string stand its cents above equal temperament.';

// ─── steps ───────────────────────────────────────────────────────────────────────────────────────────────────────

type NumberedStep = SheetStep & { readonly number: string };

/** Steps that tune are counted, those that prove are not. */
function numbered(steps: readonly SheetStep[]): readonly NumberedStep[] {
  let count = 0;
  return steps.map((step) => ({ ...step, number: step.tunes === null ? '' : `${++count}` }));
}

const STEP_COLUMNS: readonly TableColumn<NumberedStep>[] = [
  { head: 'step', cell: ({ number }) => (number === '' ? 'proof' : number) },
  { head: 'tune', cell: ({ tunes }) => printedNames(tunes ?? '') },
  { head: 'interval', cell: ({ interval }) => printedNames(interval) },
  { head: 'kind', cell: ({ kind }) => kind },
  { head: 'beats a second', numeric: true, cell: beatsInFigures },
  { head: 'cents', numeric: true, cell: ({ width }) => signed(width, 2) },
];

function retuning({ retuning: found }: TuningSheet): Html {
  if (found === null) return '';
  const from = `From ${found.from}, a4 = ${found.fromPitch} Hz`;
  if (found.notes.length === 0) return tag('p', {}, text(`${from}: nothing moves.`));
  return [
    tag('h2', {}, text(from)),
    tag(
      'div',
      { class: 'beside' },
      table('What moves', MOVE_COLUMNS, found.notes),
      table('How to set it', STEP_COLUMNS, numbered(found.steps)),
    ),
  ].join('');
}

const MOVE_COLUMNS: readonly TableColumn<NonNullable<TuningSheet['retuning']>['notes'][number]>[] = [
  { head: 'note', cell: ({ note, was }) => [...new Set([was, note])].map(printedNames).join(' becomes ') },
  { head: 'cents', numeric: true, cell: ({ cents }) => signed(cents, 1) },
];

// ─── numbers ─────────────────────────────────────────────────────────────────────────────────────────────────────

const NOTE_COLUMNS: readonly TableColumn<SheetNote>[] = [
  { head: 'note', cell: ({ note }) => printedNames(note) },
  { head: 'from c', numeric: true, cell: ({ fromC }) => fromC.toFixed(3) },
  { head: 'from a', numeric: true, cell: ({ fromA }) => fromA.toFixed(3) },
  { head: 'from equal', numeric: true, cell: ({ offset }) => signed(offset, 2) },
  { head: 'hertz', numeric: true, cell: ({ frequency }) => frequency.toFixed(3) },
];

const FIFTH_COLUMNS: readonly TableColumn<SheetFifth>[] = [
  { head: 'fifth', cell: ({ interval }) => printedNames(interval) },
  { head: 'tempered', cell: ({ tempering }) => tempering },
  { head: 'cents', numeric: true, cell: ({ width }) => signed(width, 3) },
];

const THIRD_COLUMNS: readonly TableColumn<SheetInterval>[] = [
  { head: 'third', cell: ({ interval }) => printedNames(interval) },
  { head: 'cents', numeric: true, cell: ({ width }) => signed(width, 3) },
  { head: 'beats a second', numeric: true, cell: beatsInFigures },
];

const KEY_COLUMNS: readonly TableColumn<KeyColour>[] = [
  { head: 'key', cell: ({ tonic }) => printedNames(tonic) },
  { head: 'third', numeric: true, cell: ({ third }) => signed(third, 2) },
  { head: 'fifth', numeric: true, cell: ({ fifth }) => signed(fifth, 2) },
  { head: 'unrest', numeric: true, cell: ({ unrest }) => unrest.toFixed(2) },
  { head: 'colour', cell: ({ word }) => word },
];

const STYLE = `
.under { font-size: 12pt; }
.cautions { border: 0.3mm solid #111; padding: 2mm 3mm 0; margin: 3mm 0; font-size: 9.5pt; }
.beside { display: flex; flex-wrap: wrap; gap: 4mm 12mm; align-items: flex-start; margin-top: 4mm; }
.after { margin-top: 2mm; }
`;
