/** `meiHead`: title, sources and hands, editors, annotations, the rules in force, the readings, the works. */
import type { Statement } from '../../../grammar/tree';
import type { AccidentalPractice } from '../../score/choice';
import type { Environment } from '../../score/environment';
import type { Piece, Score } from '../../score/score';
import { leaf, type XmlElement, xml } from '../xml';
import { declaredAnnotation } from './annotations';
import { declaredId } from './ids';

/** The beginning of each exported piece, for its incipit. */
export type Incipits = ReadonlyMap<Piece, XmlElement>;

/** Everything before the music. */
export const headElement = (score: Score, incipits: Incipits, wholeScore: boolean): XmlElement =>
  xml('meiHead', {}, [
    fileDescription(score.environment),
    encodingDescription(score, wholeScore),
    xml(
      'workList',
      {},
      [...incipits].map(([piece, incipit]) => workElement(score, piece, incipit)),
    ),
    manifestations(score.environment),
  ]);

// ─── the file ────────────────────────────────────────────────────────────────────────────────────────────────────

function fileDescription(environment: Environment): XmlElement {
  const { title, editors, notes, sources } = environment;
  return xml('fileDesc', {}, [
    xml('titleStmt', {}, [
      leaf('title', title ?? ''),
      editors.size === 0
        ? undefined
        : xml('respStmt', {}, [
            leaf('resp', 'editor'),
            ...[...editors].map(([signs, { name }]) =>
              xml('persName', { 'xml:id': declaredId('editor', signs), n: signs }, name),
            ),
          ]),
    ]),
    xml('pubStmt', {}, [xml('unpub')]),
    notes.size === 0
      ? undefined
      : xml(
          'notesStmt',
          {},
          [...notes].map(([name, note]) => declaredAnnotation(name, note, environment)),
        ),
    sources.length === 0
      ? undefined
      : xml(
          'sourceDesc',
          {},
          sources.map(({ name, description }) =>
            xml('source', { 'xml:id': declaredId('source', name), n: name }, [leaf('bibl', description)]),
          ),
        ),
  ]);
}

/** The layers of the sources. */
function manifestations({ sources }: Environment): XmlElement | undefined {
  const layered = sources.filter(({ hands }) => hands.length > 0);
  if (layered.length === 0) return undefined;
  return xml(
    'manifestationList',
    {},
    layered.map(({ name, hands }) =>
      xml('manifestation', { corresp: `#${declaredId('source', name)}` }, [
        xml('physDesc', {}, [
          xml(
            'handList',
            {},
            hands.map(({ layer, description }) =>
              xml('hand', { 'xml:id': declaredId('hand', `${name}.${layer}`), n: `${name}.${layer}` }, description),
            ),
          ),
        ]),
      ]),
    ),
  );
}

// ─── the encoding ────────────────────────────────────────────────────────────────────────────────────────────────

const PRACTICES: Readonly<Record<AccidentalPractice, string>> = {
  note: 'A written accidental holds for its note and the immediate repetitions of the same pitch in its voice.',
  group: 'A written accidental holds for the notes under one beam.',
  bar: 'A written accidental holds to the barline, for all voices of its stave, in its octave.',
};

/** Statements that are rules of the edition and are told as they are written. */
const RULES: ReadonlySet<string> = new Set([
  'accidentals',
  'beaming',
  'practice',
  'signs',
  'table',
  'tuning',
  'temperament',
  'pitch',
  'tempo',
  'order',
  'link',
]);

function encodingDescription(score: Score, wholeScore: boolean): XmlElement {
  const { choice, environment } = score;
  const rules = environment.statements.filter(({ statement }) => RULES.has(statement.keyword));
  return xml('encodingDesc', {}, [
    xml('appInfo', {}, [xml('application', {}, [leaf('name', 'Bentside')])]),
    xml('editorialDecl', {}, [
      xml('interpretation', {}, [
        leaf('p', PRACTICES[choice.accidentals]),
        leaf('p', 'What sounds (accid.ges) is computed from the signature and from this practice.'),
        xml('p', { n: 'reading' }, `The text is that of the reading ${choice.name}; other readings stand beside it.`),
      ]),
      ...rules.map((rule) => xml('p', { n: rule.statement.keyword }, textOf(rule, score))),
    ]),
    wholeScore ? undefined : xml('samplingDecl', {}, [leaf('p', 'Some of the bars only are encoded.')]),
    readingsElement(score),
  ]);
}

/** A statement as it is written, without comments and columns; one of an included file by its name and file. */
function textOf({ statement, declared }: Environment['statements'][number], { tree }: Score): string {
  const { file, block, statement: index } = declared;
  const text = file === undefined ? tree.blocks[block]?.statements[index]?.tree.text : undefined;
  if (text === undefined) return [statement.keyword, nameIn(statement), `(${file?.split('/').at(-1)})`].join(' ');
  return text
    .replace(/("(?:[^"]|"")*")|\/\/.*$|[^\S\n]+/gm, (part, quoted) => quoted ?? (part.trim() === '' ? ' ' : ''))
    .trim();
}

const nameIn = ({ args }: Statement): string => args.map((arg) => ('text' in arg ? arg.text : '')).find(Boolean) ?? '';

/** Each reading is a class of the text, which the variants and limits name. */
function readingsElement(score: Score): XmlElement | undefined {
  const { readings, statements } = score.environment;
  if (readings.length === 0) return undefined;
  const categories = readings.map(({ name, description, file, block, statement: index }) => {
    const said = statements.find(
      ({ declared }) => declared.file === file && declared.block === block && declared.statement === index,
    );
    return xml('category', { 'xml:id': declaredId('reading', name), n: name }, [
      description === '' ? undefined : leaf('label', description),
      said === undefined ? undefined : leaf('desc', textOf(said, score)),
    ]);
  });
  return xml('classDecls', {}, [xml('taxonomy', { type: 'readings' }, categories)]);
}

// ─── works ───────────────────────────────────────────────────────────────────────────────────────────────────────

function workElement(score: Score, piece: Piece, incipit: XmlElement): XmlElement {
  const instruments = score.environment.statements.filter(({ statement }) => statement.keyword === 'instrument');
  return xml('work', {}, [
    leaf('title', piece.name === '' ? (score.environment.title ?? '') : piece.name),
    xml('incip', {}, [incipit]),
    instruments.length === 0
      ? undefined
      : xml('perfMedium', {}, [
          xml(
            'perfResList',
            {},
            instruments.map((one) => leaf('perfRes', textOf(one, score))),
          ),
        ]),
  ]);
}
