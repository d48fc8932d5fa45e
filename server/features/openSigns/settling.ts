/** What writes into a text how a sign is played: a word in its round brackets, and an annotation that says why. */
import type { TextChange } from '../../document/edits';
import { offsetOf } from '../../score/walk';
import { HOW_PLAYED } from '../../signs/settled';
import type { Project } from '../../workspace/project';
import { annotationSaying } from '../annotating';
import type { OpenSign } from './openSigns';

/** @param word in round brackets; none accepts what is played now */
export function settling(project: Project, sign: OpenSign, reason: string, word?: string): TextChange[] {
  const { name, changes } = annotationSaying(project, { text: reason, kind: HOW_PLAYED, ...editorOf(project) });
  const cited = { offset: endOfSign(project, sign), length: 0, text: `*${name}` };
  const said = word === undefined ? [] : [wordAfter(sign, word)];
  // Where nothing stands between them they are one change.
  const [bracket] = said;
  const joined = bracket?.offset === cited.offset ? [{ ...cited, text: bracket.text + cited.text }] : [...said, cited];
  return [...changes, ...joined];
}

/** Whoever signs the annotations of a file is known where it names one editor. */
function editorOf({ environment: { editors } }: Project): { readonly by?: string } {
  const [only, another] = editors.keys();
  return only === undefined || another !== undefined ? {} : { by: only };
}

/** Behind the first mark and the accidentals that belong to it. */
function endOfSign({ tree }: Project, { signs: [{ mark, written }] }: OpenSign): number {
  const last = [mark.source, ...mark.accidentals.map(({ source }) => source)].at(-1) ?? mark.source;
  return offsetOf(tree, written.placed.system, last) + last.len;
}

/** What stands before the round brackets of a mark: its name, the editor's brackets, `?`, `+`. */
const BEFORE_BRACKETS = /^'(?:\[[^\]]*\]|[A-Za-z]\w*)\??\+?/;

/** The word as the last in the round brackets, or in brackets of its own. */
function wordAfter({ start, signs: [{ mark }] }: OpenSign, word: string): TextChange {
  const { text, parameters } = mark.form;
  const before = BEFORE_BRACKETS.exec(text)?.[0].length ?? text.length;
  if (text[before] !== '(') return { offset: start + before, length: 0, text: `(${word})` };
  const closing = text.indexOf(')', before);
  const parted = parameters.length === 0 ? word : ` ${word}`;
  return { offset: start + closing, length: 0, text: parted };
}
