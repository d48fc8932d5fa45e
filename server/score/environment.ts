/**
 * What the declarations of a file and its includes say and a system can see.
 */
import type { Clause, Span, Statement, ValueForm } from '../../grammar/tree';
import type { AccidentalPractice } from './choice';
import type { PlacedProblem, Tempo } from './score';

export { brought, buildEnvironment } from './declare';

/** Where a declaration stands: undefined file means the file itself. */
export interface Declared extends Span {
  readonly file: string | undefined;
  readonly block: number;
  /** Index in the block's statements; `pos` and `len` count in its text. */
  readonly statement: number;
}

export interface Environment {
  readonly title: string | undefined;
  /** In the order of their statements; a voice that names none has a stave of its own where it is declared. */
  readonly staves: readonly StaveDeclaration[];
  readonly voices: readonly VoiceDeclaration[];
  readonly sources: readonly SourceDeclaration[];
  readonly readings: readonly ReadingDeclaration[];
  readonly accidentals: AccidentalPractice;
  readonly beaming: readonly { readonly value: ValueForm; readonly by: number }[];
  /** Of the head; a tempo between systems is a change of that place. */
  readonly tempo: Tempo | undefined;
  /** Frequency of a4 in hertz. */
  readonly pitch: number | undefined;
  /** MIDI keys of the lowest and the highest note (c4 is 60). */
  readonly compass: { readonly low: number; readonly high: number } | undefined;
  /** File-level `signs`. */
  readonly signs: string | undefined;
  /** Sign names of the tables that the file defines or includes: name to shapes, by table. */
  readonly tables: readonly TableDeclaration[];
  /** Annotations, for look-ups and checks. */
  readonly notes: ReadonlyMap<string, NoteDeclaration>;
  readonly editors: ReadonlyMap<string, Declared & { readonly name: string }>;
  /** Keywords that the file itself states; where one is missing its default holds, and who uses it says so. */
  readonly stated: ReadonlySet<string>;
  /** The statements that made this, in order: those of includes first. */
  readonly statements: readonly { readonly statement: Statement; readonly declared: Declared }[];
  readonly problems: readonly PlacedProblem[];
}

/**
 * What of the declarations a system can see. Its score depends on no others, so that a title, a source's description or the
 * text of a note can change and every system stays.
 */
export interface SystemEnvironment {
  readonly staves: readonly Pick<StaveDeclaration, 'name' | 'lines'>[];
  readonly voices: readonly Pick<VoiceDeclaration, 'name' | 'stave' | 'stems'>[];
  readonly beaming: Environment['beaming'];
  /** Known witnesses; only systems with witness lanes look at them. */
  readonly sources: readonly Pick<SourceDeclaration, 'name'>[];
  // What decides the shape that a sign's name stands for.
  readonly signs: string | undefined;
  readonly tables: readonly Pick<TableDeclaration, 'name' | 'from' | 'rows'>[];
  readonly readings: readonly Pick<ReadingDeclaration, 'signs'>[];
}

/** The part of an environment that systems can see, and nothing else. @param witnesses those that have lanes */
export const seenBySystems = (
  environment: SystemEnvironment,
  witnesses: SystemEnvironment['sources'] = environment.sources,
): SystemEnvironment => ({
  staves: environment.staves.map(({ name, lines }) => ({ name, lines })),
  voices: environment.voices.map(({ name, stave, stems }) => ({ name, stave, stems })),
  beaming: environment.beaming,
  sources: witnesses.map(({ name }) => ({ name })),
  signs: environment.signs,
  tables: environment.tables.map(({ name, from, rows }) => ({ name, from, rows })),
  readings: environment.readings.flatMap(({ signs }) => (signs === undefined ? [] : [{ signs }])),
});

export interface StaveDeclaration extends Declared {
  readonly name: string;
  /** Number of lines, 4 to 8; 5 where the declaration does not say. */
  readonly lines: number;
  /** The part to which it belongs, where several forms of the music stand above one another. */
  readonly part?: string;
}

export interface VoiceDeclaration extends Declared {
  readonly name: string;
  /** Index of its stave. */
  readonly stave: number;
  readonly stems: 'up' | 'down' | undefined;
  /** In a score whose signs are written out: the voice of which this one holds notes. */
  readonly beside?: number;
}

export interface SourceDeclaration extends Declared {
  readonly name: string;
  readonly description: string;
  /** `hand K.2 "paler ink"`: layers of this source. */
  readonly hands: readonly { readonly layer: number; readonly description: string }[];
}

export interface ReadingDeclaration extends Declared {
  readonly name: string;
  readonly description: string;
  readonly from: string | undefined;
  readonly takes: readonly string[];
  /** Place to the label taken there. */
  readonly at: ReadonlyMap<string, string>;
  readonly accidentals: AccidentalPractice | undefined;
  readonly signs: string | undefined;
  readonly order: readonly string[] | undefined;
  /** All that the reading says, for those who read practices, tuning and tempo. */
  readonly clauses: readonly Clause[];
}

export interface TableDeclaration extends Declared {
  readonly name: string;
  readonly from: string | undefined;
  /** Rows to which the table gives a name: the name as it can be typed, and the shapes it stands for. */
  readonly rows: readonly { readonly name: string; readonly shapes: readonly string[] }[];
}

export interface NoteDeclaration extends Declared {
  readonly text: string | undefined;
  /** `reading`, `rhythm` …, one of the vocabulary's kinds. */
  readonly about: string | undefined;
  readonly by: string | undefined;
  readonly certainty: string | undefined;
  readonly evidence: string | undefined;
}

/** All names that the declarations give, by what they stand for. */
export interface DeclaredNames {
  readonly staves: readonly string[];
  readonly voices: readonly string[];
  readonly witnesses: readonly string[];
  /** `K.2`. */
  readonly layers: readonly string[];
  readonly readings: readonly string[];
  readonly notes: readonly string[];
  readonly editors: readonly string[];
  readonly tables: readonly string[];
}

/** So many readings, sources and hands can be chosen, the text as written among them. */
export const MOST_CHOICES = 256;

/** What could be chosen were there no bound: `written`, readings, sources, hands. */
export const allChoices = (
  readings: readonly Pick<ReadingDeclaration, 'name'>[],
  sources: readonly SourceDeclaration[],
): readonly string[] => [
  'written',
  ...readings.map(({ name }) => name),
  ...sources.map(({ name }) => name),
  ...layersOf(sources),
];

const layersOf = (sources: readonly SourceDeclaration[]): readonly string[] =>
  sources.flatMap(({ name, hands }) => hands.map(({ layer }) => `${name}.${layer}`));

export const declaredNames = (environment: Environment): DeclaredNames => ({
  staves: environment.staves.map((stave) => stave.name),
  voices: environment.voices.map((voice) => voice.name),
  witnesses: environment.sources.map((source) => source.name),
  layers: layersOf(environment.sources),
  readings: environment.readings.map((reading) => reading.name),
  notes: [...environment.notes.keys()],
  editors: [...environment.editors.keys()],
  tables: environment.tables.map((table) => table.name),
});
