/** The critical report of a score: always computed from its text, so that it never lags behind it. */
import { buildScore } from '../score/build';
import { declaredNames } from '../score/environment';
import type { Score } from '../score/score';
import { differencesOf } from './compare/differences';
import { comparedText } from './compare/symbols';
import type { Report, ReportSection } from './report/document';
import { EDITOR, entriesSection } from './report/entries';
import { keyTo, symbolsIn, symbolsOf } from './report/key';
import { notesSection } from './report/notes';
import { rulesSection } from './report/rules';
import { readingsSection, sourcesSection } from './report/sources';
import { suppliedSection } from './report/supplied';

/**
 * @param main the score as `written`
 * @param scoreOf gives the score of a source, hand or reading
 */
export function reportOf(main: Score, scoreOf: (name: string) => Score | undefined): Report {
  const { environment, file } = main;
  const { readings, witnesses, layers } = declaredNames(environment);
  const sources = [...witnesses, ...layers].flatMap((name) => scoreOf(name) ?? []).map(unmended);
  const scores = [main, ...sources, mended(main)];
  const differences = differencesOf(
    scores.map((score) => ({ name: score.choice.name, text: comparedText(score) })),
  ).filter(({ kind }) => kind !== 'time');
  const names = scores.map(({ choice }) => choice.name);
  const all = [...scores, ...readings.flatMap((name) => scoreOf(name) ?? [])];
  const supplied = suppliedSection(all);
  const sections = [
    sourcesSection(environment),
    rulesSection(environment, keyTo([...symbolsOf(differences), ...symbolsIn(supplied)])),
    readingsSection(environment),
    entriesSection(main, differences, names),
    supplied,
    notesSection(all),
  ];
  return { title: environment.title ?? file, file, sections: sections.filter(says) };
}

const says = ({ said, tables }: ReportSection): boolean => said.length > 0 || tables.length > 0;

/** What a source has is what it has, the editor's mending left out. */
export const unmended = ({ file, tree, environment, choice }: Score): Score =>
  buildScore(file, tree, environment, { ...choice, labels: [...choice.labels, 'sic'] });

/** The main text with what the editor mends (`corr`). */
function mended({ file, tree, environment, choice }: Score): Score {
  return buildScore(file, tree, environment, { ...choice, name: EDITOR, labels: ['corr'] });
}
