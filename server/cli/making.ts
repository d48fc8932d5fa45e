/** One score made into the contents of files; what writes them is the host. */
import type { Finding } from '../../grammar/findings/finding';
import { findingOfScore } from '../document/absolute';
import type { ExportFormat, ExportOptions } from '../export/formats';
import type { Score } from '../score/score';
import type { Project } from '../workspace/project';
import { didYouMean } from './options';
import { counted, findingLine, shown } from './print';

export interface Wish {
  readonly format: ExportFormat;
  /** A reading or witness, `all`, or undefined for `written`. */
  readonly reading: string | undefined;
  readonly options: ExportOptions;
}

export interface Made {
  readonly contents: readonly { readonly reading: string; readonly content: string | Uint8Array }[];
  /** What the user is to be told, as lines. */
  readonly says: string;
  /** Whether all that was wished for was made. */
  readonly whole: boolean;
}

const nothing = (says: string): Made => ({ contents: [], says, whole: false });

/** Makes what is wished of a score. One with errors in a reading that is wished for gives nothing, unless gaps may be left. */
export function make(project: Project, wish: Wish): Made {
  const { analysis, file } = project;
  const wished = wish.reading ?? 'written';
  const readings = wished === 'all' ? analysis.choices : analysis.choices.filter((name) => name === wished);
  if (readings.length === 0) return nothing(unknownReading(project, wished));
  const errors = analysis.findings().filter((finding) => finding.level === 'error' && concerns(finding, readings));
  if (errors.length > 0 && !wish.options.leaveGaps) {
    const count = counted(errors.length, 'error', 'errors');
    return nothing(
      `${errors.map(findingLine).join('')}${shown(file)}: not exported, because of ${count}; --leave-gaps exports what is sound\n`,
    );
  }
  const made = readings.flatMap((reading) => {
    const score = analysis.score(reading);
    return score === undefined ? [] : [makeReading(score, wish)];
  });
  return {
    contents: made.flatMap(({ contents }) => contents),
    says: made.map(({ says }) => says).join(''),
    whole: made.every(({ whole }) => whole),
  };
}

/** Whether a finding arises in one of these readings. */
const concerns = (finding: Finding, readings: readonly string[]): boolean =>
  finding.readings === undefined || finding.readings.some((reading) => readings.includes(reading));

const unknownReading = ({ file, analysis: { choices } }: Project, wished: string): string =>
  `${shown(file)}: it has no reading or witness “${shown(wished)}”, but ${choices.join(', ')}.${didYouMean(wished, choices)}\n`;

function makeReading(score: Score, { format, options }: Wish): Made {
  const reading = score.choice.name;
  const { content, problems } = format.write(score, options);
  const says = problems.map((problem) => findingLine(findingOfScore(score, problem))).join('');
  if (content.length > 0) return { contents: [{ reading, content }], says, whole: true };
  return nothing(`${says}${shown(score.file)}: the reading ${reading} was not exported\n`);
}
