/** A tuning as the server tells it, in the words of the page. */
import { l10n } from 'vscode';
import type { ShownTuning } from '../../server/features/protocol';
import { beatsInFigures, signed } from '../../server/tuning/figures';
import type { KeyColour } from '../../server/tuning/keyColours';
import type { Retuning, SheetInterval, SheetStep, TuningSheet } from '../../server/tuning/sheet';
import type { PageOfTuning, ShownStep, ShownTable } from './messages';

export function pageOf({ sheet, words, drawing, assumed, writes, obstacle }: ShownTuning): PageOfTuning {
  const assumptions = {
    temperament: l10n.t('The score states no tuning: equal temperament is assumed.'),
    pitch: l10n.t('The score states no pitch: a4 = {0} Hz is assumed.', sheet.pitch),
  };
  return {
    title: sheet.title,
    under: [
      l10n.t('a4 = {0} Hz', sheet.pitch),
      ...(sheet.note === '' ? [] : [sheet.note]),
      ...assumed.map((one) => assumptions[one]),
    ],
    words,
    drawing,
    stepsTitle: stepsTitle(sheet.retuning),
    steps: shownSteps(sheet.retuning?.steps ?? sheet.steps),
    tables: tablesOf(sheet),
    cautions: sheet.cautions,
    writes: obstacle || (writes.length === 0 ? l10n.t('The file has this tuning.') : writes.join('\n')),
    canWrite: obstacle === '' && writes.length > 0,
  };
}

function stepsTitle(retuning: Retuning | null): string {
  if (retuning === null) return l10n.t('From the fork, step by step');
  const from = `${retuning.from}, a4 = ${retuning.fromPitch} Hz`;
  return retuning.notes.length === 0
    ? l10n.t('From {0}: nothing moves', from)
    : l10n.t('From {0}: what is set anew', from);
}

// ─── steps ───────────────────────────────────────────────────────────────────────────────────────────────────────

/** Steps that tune are counted, those that prove are not. */
function shownSteps(steps: readonly SheetStep[]): ShownStep[] {
  const count = steps.filter(({ tunes }) => tunes !== null).length;
  let number = 0;
  return steps.map((step) => {
    if (step.tunes !== null) number++;
    const { interval, hertz, partials } = step;
    const kind = kindInWords(step);
    return {
      ...{ interval, kind, hertz, partials },
      number: step.tunes === null ? '' : `${number}`,
      tunes: step.tunes ?? '',
      beats: beatsInFigures(step),
      says: `${stepInWords(step, number, count)} ${whereToListen(step)}`,
    };
  });
}

/** Intervals by which a temperament is laid or proved. */
function kindInWords({ kind }: SheetStep): string {
  const words: Readonly<Record<string, string>> = {
    octave: l10n.t('octave'),
    fifth: l10n.t('fifth'),
    fourth: l10n.t('fourth'),
    'major third': l10n.t('major third'),
    'minor third': l10n.t('minor third'),
    'major sixth': l10n.t('major sixth'),
    'minor sixth': l10n.t('minor sixth'),
  };
  return words[kind] ?? kind;
}

/** "Step 3 of 12: c4 from f3, fifth: 1.64 beats a second (98 a minute), narrow." */
function stepInWords(step: SheetStep, number: number, count: number): string {
  const { interval, tunes, beats, direction } = step;
  const kind = kindInWords(step);
  const heard =
    direction === 'pure'
      ? l10n.t('pure, without beats')
      : l10n.t(
          '{0} beats a second ({1} a minute), {2}',
          beats.toFixed(2),
          Math.round(60 * beats),
          direction === 'wide' ? l10n.t('wide') : l10n.t('narrow'),
        );
  if (tunes === null) return l10n.t('Proof after step {0}: {1}, {2}: {3}.', number, interval, kind, heard);
  const from = interval.split('-').find((note) => note !== tunes) ?? '';
  return l10n.t('Step {0} of {1}: {2} from {3}, {4}: {5}.', number, count, tunes, from, kind, heard);
}

/** Beats are heard where two partials meet. */
function whereToListen({ interval, hertz, partials }: SheetStep): string {
  const [low = '', high = ''] = interval.split('-');
  const where = Math.round(partials[0] * hertz[0]);
  return l10n.t(
    'Listen where partial {0} of {1} meets partial {2} of {3}, near {4} Hz.',
    partials[0],
    low,
    partials[1],
    high,
    where,
  );
}

// ─── tables ──────────────────────────────────────────────────────────────────────────────────────────────────────

interface Column<Row> {
  readonly head: string;
  readonly isNumber?: boolean;
  readonly cell: (row: Row) => string;
}

const tableOf = <Row>(caption: string, columns: readonly Column<Row>[], rows: readonly Row[]): ShownTable => ({
  caption,
  columns: columns.map(({ head, isNumber = false }) => ({ head, isNumber })),
  rows: rows.map((row) => columns.map(({ cell }) => cell(row))),
});

function tablesOf(sheet: TuningSheet): ShownTable[] {
  const { notes, fifths, majorThirds, minorThirds, keys, retuning } = sheet;
  return [
    ...(retuning === null || retuning.notes.length === 0 ? [] : [moves(retuning)]),
    tableOf(
      l10n.t('Notes, hertz from c4 on'),
      [
        { head: l10n.t('note'), cell: ({ note }) => note },
        { head: l10n.t('cents from c'), isNumber: true, cell: ({ fromC }) => fromC.toFixed(2) },
        { head: l10n.t('cents from equal'), isNumber: true, cell: ({ offset }) => signed(offset, 2) },
        { head: l10n.t('hertz'), isNumber: true, cell: ({ frequency }) => frequency.toFixed(2) },
      ],
      notes,
    ),
    tableOf(
      l10n.t('Fifths, beats from f3 on'),
      [
        ...intervalColumns(),
        { head: l10n.t('tempered by'), cell: ({ tempering }: TuningSheet['fifths'][number]) => tempering },
      ],
      fifths,
    ),
    tableOf(l10n.t('Major thirds, beats from f3 on'), intervalColumns(), majorThirds),
    tableOf(l10n.t('Minor thirds, beats from f3 on'), intervalColumns(), minorThirds),
    tableOf(
      l10n.t('Colour of the major keys'),
      keyColumns(),
      keys.filter(({ mode }) => mode === 'major'),
    ),
    tableOf(
      l10n.t('Colour of the minor keys'),
      keyColumns(),
      keys.filter(({ mode }) => mode === 'minor'),
    ),
  ];
}

const moves = ({ notes }: Retuning): ShownTable =>
  tableOf(
    l10n.t('What moves'),
    [
      { head: l10n.t('note'), cell: ({ note, was }) => (note === was ? note : l10n.t('{0} becomes {1}', was, note)) },
      { head: l10n.t('cents'), isNumber: true, cell: ({ cents }) => signed(cents, 1) },
    ],
    notes,
  );

const intervalColumns = (): Column<SheetInterval>[] => [
  { head: l10n.t('interval'), cell: ({ interval }) => interval },
  { head: l10n.t('cents from pure'), isNumber: true, cell: ({ width }) => signed(width, 2) },
  { head: l10n.t('beats a second'), isNumber: true, cell: beatsInFigures },
];

const keyColumns = (): Column<KeyColour>[] => [
  { head: l10n.t('key'), cell: ({ tonic }) => tonic },
  { head: l10n.t('third'), isNumber: true, cell: ({ third }) => signed(third, 1) },
  { head: l10n.t('fifth'), isNumber: true, cell: ({ fifth }) => signed(fifth, 1) },
  { head: l10n.t('unrest'), isNumber: true, cell: ({ unrest }) => unrest.toFixed(1) },
  { head: l10n.t('colour'), cell: ({ word }) => word },
];
