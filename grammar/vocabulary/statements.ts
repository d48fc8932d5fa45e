/** The vocabulary of statements and changes: every keyword, clause and word with what may stand after it. */
import { FEWEST_LINES, MOST_LINES } from './clefs';
import {
  type ChangeEntry,
  type ClauseEntry,
  type Clauses,
  cited,
  either,
  free,
  given,
  type Part,
  type StatementEntry,
  type WordEntry,
  words,
} from './parts';

const nothing: readonly Part[] = [];
const optional = { optional: true };

// ─── parts that several statements share ─────────────────────────────────────────────────────────────────────────

const description = free('description', 'string', 'a description in quotes');
const lines: ClauseEntry = {
  describe: 'The number of lines drawn, counted from the bottom.',
  parts: [free('count', 'whole', 'a number of lines', { range: { low: FEWEST_LINES, high: MOST_LINES } })],
};
const accidentals = words('a reach of accidentals', {
  note: 'for its note and the immediate repetitions of it',
  group: 'for the notes under one beam',
  bar: 'to the barline, in its octave, for all voices of the stave',
});
const tempo: readonly Part[] = [
  free('value', 'value', 'a note value'),
  free('rate', 'decimal', 'a number a minute', { after: 'at', range: { low: 5, high: 600 } }),
];
const meter: readonly Part[] = [
  free('sign', 'meter', 'the metre sign as drawn'),
  free('length', 'barLength', 'the length of a bar, such as 3/2', { after: '=', optional: true }),
];
const signTable = cited('table', 'the name of a sign table');
const tuning = either('a tuning', [
  [
    words('a tuning', {
      meantone: {
        describe: 'Eleven equal narrow fifths and a wolf.',
        follow: [
          free('comma', 'commaPart', 'the part of a comma by which each fifth is narrow, such as 1/4'),
          words('a comma', { sc: 'the syntonic comma', pc: 'the Pythagorean comma' }, optional),
          free('wolf', 'fifth', 'the fifth that is left wide, such as g#-eb', { after: 'wolf', optional: true }),
        ],
      },
    }),
  ],
  [cited('temperament', 'the name of a temperament')],
]);
const order = cited('section', 'the name of a section', { repeat: true });

const practiceScope: readonly Part[] = [
  cited('section', 'the name of a section', { after: 'in', optional: true }),
  cited('voice', 'the name of a voice', { after: 'voice', optional: true }),
];
const practised = (describe: string, ...follow: readonly Part[]): WordEntry => ({
  describe,
  follow: [...follow, ...practiceScope],
});
const practice = words('a practice', {
  overdot: practised(
    'Dotted notes are stretched and what follows is shortened.',
    words('an extent', { double: 'as if dotted twice', shortest: 'to the shortest figure in the section' }, optional),
    words(
      'a way to fill the dot',
      { held: 'the note sounds through the dot', silent: 'a silence for the dot' },
      optional,
    ),
  ),
  inegal: practised(
    'Pairs of equal notes are played unequally.',
    either(
      'the values that are unequal',
      [
        [free('value', 'value', 'a note value')],
        [words('the values that are unequal', { 'by-meter': 'the values that the metre makes unequal' })],
      ],
      optional,
    ),
    free('ratio', 'shares', 'the lengths of the two notes, such as 3:2', optional),
    words('a condition', { stepwise: 'only in pairs that move by step' }, optional),
    words(
      'the place of the long note',
      { 'long-short': 'the first of the pair', 'short-long': 'the second of the pair' },
      optional,
    ),
  ),
  assimilate: practised(
    'Duple figures against triplets.',
    words('a way of meeting', {
      triplet: 'the duple figure takes the time of the triplet',
      duple: 'the triplet takes the time of the duple figure',
      literal: 'each as it is written',
    }),
  ),
  snap: practised('Dotted pairs with the short note first are sharpened.'),
  upbeats: practised('Upbeat figures.', words('a time', { late: 'at the last moment, as fast as they can be' })),
  hemiola: practised('Two bars of three are played as three of two where the source shows it.'),
  literal: practised('All is played as it is written, whatever is said more generally.'),
});

// ─── what a head restates and a change brings ────────────────────────────────────────────────────────────────────

const stateClauses: Clauses = {
  key: {
    describe: 'The signature: the signs as drawn, `none` takes it away.',
    repeats: true,
    parts: [
      cited('stave', 'the name of a stave', optional),
      either('the signs of a signature, such as bb, or none', [
        [words('a signature', { none: 'no signature' })],
        [free('sign', 'keySign', 'a note with its sign, such as bb or f#4', { repeat: true })],
      ]),
    ],
  },
  meter: { describe: 'The metre sign as drawn; `= 3/2` where a bar has another length than usual.', parts: meter },
  tempo: { describe: 'How many of a value go to a minute.', parts: tempo },
};

const clefPart = free('clef', 'clef', 'a clef, such as C1 or F4+C6');

// ─── statements ──────────────────────────────────────────────────────────────────────────────────────────────────

export const statements: Readonly<Record<string, StatementEntry>> = {
  bentside: {
    describe: 'The edition of the notation in which the file is written.',
    parts: [words('an edition of the notation', { '1': 'the first edition' })],
    clauses: {},
  },
  title: { describe: 'The title of the whole.', parts: [free('text', 'string', 'the title in quotes')], clauses: {} },
  source: {
    describe: 'A source of the text, a witness.',
    parts: [given('witness', 'the letter or name of a source'), description],
    clauses: {},
    repeats: true,
  },
  hand: {
    describe: 'A layer of a source: another hand or a later state.',
    parts: [given('layer', 'a source and the number of its layer, such as K.2'), description],
    clauses: {},
    repeats: true,
  },
  editor: {
    describe: 'A person who signs annotations.',
    parts: [given('editor', 'the letters of an editor'), free('name', 'string', "the editor's name in quotes")],
    clauses: {},
    repeats: true,
  },
  reading: {
    describe: 'A named bundle of choices: what is taken and how it is played.',
    parts: [given('reading', 'the name of a reading'), { ...description, optional: true }],
    repeats: true,
    clauses: {
      from: { describe: 'The reading on which this one is built.', parts: [cited('reading', 'the name of a reading')] },
      takes: {
        describe: 'The witnesses whose options are taken, the preferred first.',
        parts: [free('labels', 'names', 'the names of witnesses, such as K,L', { role: 'label' })],
      },
      signs: { describe: 'The table by which signs are played.', parts: [signTable] },
      practice: { describe: 'A practice of rhythm.', parts: [practice], repeats: true },
      accidentals: { describe: 'How long a written accidental holds.', parts: [accidentals] },
      tuning: { describe: 'The tuning.', parts: [tuning] },
      tempo: { describe: 'The tempo.', parts: tempo },
      order: { describe: 'The sections in the order of playing.', parts: [order] },
      at: {
        describe: 'What is taken at one named place.',
        repeats: true,
        parts: [
          cited('place', 'the name of a place'),
          cited('label', 'the name of a witness or reading', { after: 'takes' }),
        ],
      },
    },
  },
  instrument: {
    describe: 'The instrument, its compass and manuals.',
    parts: [given('instrument', 'the name of an instrument')],
    clauses: {
      compass: {
        describe: 'The lowest and the highest key.',
        parts: [free('keys', 'compass', 'the lowest and the highest key, such as g1-d6')],
      },
      'short-octave': {
        describe: 'A short octave: what the lowest keys sound.',
        parts: [
          words('a short octave', { 'c/e': 'the key of e sounds c', 'g/b': 'the key of b sounds g' }),
          words('a word about its sharps', { broken: 'its sharps are divided in two' }, optional),
          words(
            'which half has the note of the short octave',
            { front: 'the front half, as a rule', back: 'the back half' },
            optional,
          ),
        ],
      },
      lacks: {
        describe: 'Notes within the compass that have no key.',
        parts: [free('note', 'pitch', 'a note that has no key, such as c#2', { repeat: true })],
      },
      split: {
        describe: 'Keys that are divided for two notes.',
        parts: [free('key', 'splitKey', 'the two notes of a divided key, such as d#/eb', { repeat: true })],
        repeats: true,
      },
    },
    rows: {
      kind: 'manual',
      word: 'manual',
      describe: 'A manual and its stops.',
      parts: [given('manual', 'the name of a manual')],
      clauses: {
        stops: {
          describe: 'The stops by their length in feet.',
          parts: [free('feet', 'whole', 'a length in feet', { repeat: true, range: { low: 1, high: 32 } })],
        },
      },
    },
  },
  pitch: {
    describe: 'The pitch standard: the frequency of the a above middle C.',
    parts: [
      free('note', 'pitchOfA', 'a4'),
      free('frequency', 'decimal', 'the frequency in hertz', { after: '=', range: { low: 300, high: 600 } }),
    ],
    clauses: {},
  },
  tuning: { describe: 'The tuning.', parts: [tuning], clauses: {} },
  temperament: {
    describe: 'A temperament of our own: a row for each fifth that is not as in the one it comes from, or pure.',
    parts: [given('temperament', 'the name of a temperament')],
    clauses: {
      from: {
        describe: 'The temperament from which it comes.',
        parts: [cited('temperament', 'the name of a temperament')],
      },
    },
    repeats: true,
    rows: {
      kind: 'fifth',
      describe: 'A fifth and how far it is from pure.',
      parts: [
        free('fifth', 'fifth', 'a fifth, such as c-g'),
        either('a distance from pure, such as -1/4 sc, 2.0 beats narrow, pure, or rest', [
          [
            words('a fifth without a number', {
              pure: 'this fifth is pure, whatever it is in the temperament that this one comes from',
              rest: 'this fifth takes what the circle still lacks',
            }),
          ],
          [
            free('part', 'tempering', 'a part of a comma, such as -1/4'),
            words('a comma', { sc: 'the syntonic comma', pc: 'the Pythagorean comma' }),
          ],
          [
            free('rate', 'decimal', 'beats a second', { range: { low: 0, high: 50 } }),
            words('a direction', { narrow: 'narrower than pure', wide: 'wider than pure' }, { after: 'beats' }),
          ],
        ]),
      ],
      clauses: {},
    },
  },
  tempo: { describe: 'How many of a value go to a minute.', parts: tempo, clauses: {}, repeats: true },
  accidentals: {
    describe: 'How long a written accidental holds in the source.',
    parts: [accidentals],
    clauses: {},
  },
  beaming: {
    describe: 'How notes are beamed where the lanes do not say.',
    parts: [
      free('value', 'value', 'a note value'),
      free('number', 'whole', 'a number of notes', { after: 'by', range: { low: 1, high: 64 } }),
    ],
    clauses: {},
    repeats: true,
  },
  stave: {
    describe: 'A stave.',
    parts: [given('stave', 'the name of a stave')],
    clauses: { lines },
    repeats: true,
  },
  voice: {
    describe: 'A voice and the stave on which it stands; without one it has a stave of its own.',
    parts: [given('voice', 'the name of a voice'), cited('stave', 'the name of a stave', optional)],
    clauses: {
      stems: {
        describe: 'Which way its stems point where two voices share the stave.',
        parts: [words('a direction', { up: 'upwards', down: 'downwards' })],
      },
      lines,
    },
    repeats: true,
  },
  page: {
    describe: 'A page or leaf of the source begins.',
    parts: [free('label', 'string', 'the number of the page or leaf in quotes')],
    clauses: { image: { describe: 'Its picture.', parts: [free('file', 'string', 'a file name in quotes')] } },
    repeats: true,
  },
  system: {
    describe: 'A system of the source; its lanes follow.',
    parts: [
      words(
        'a kind of system',
        {
          loose: 'values count, barlines of the lanes need not agree',
          free: 'no measured time',
        },
        optional,
      ),
    ],
    clauses: {
      clef: {
        describe: 'The clef drawn at the head of a stave.',
        opens: 'staveAndClef',
        parts: [cited('stave', 'the name of a stave'), clefPart],
        repeats: true,
      },
      ...stateClauses,
      at: {
        describe: 'Where the system lies on the picture of the page.',
        parts: [free('region', 'region', 'left, top, width and height, such as 120,340,1800,410')],
      },
    },
    repeats: true,
  },
  piece: {
    describe: 'A movement begins, with its own bars and state.',
    parts: [free('name', 'string', 'the name of the movement in quotes')],
    clauses: {},
    repeats: true,
  },
  include: {
    describe: 'Brings the tables, people and sources of another file.',
    parts: [free('file', 'string', 'a file name in quotes')],
    clauses: {},
    repeats: true,
  },
  section: {
    describe: 'A section begins with the next system.',
    parts: [
      given('section', 'the name of a section'),
      free('within', 'name', 'the name of the section of which it is a part', {
        role: 'section',
        after: 'in',
        optional: true,
      }),
    ],
    clauses: {},
    repeats: true,
  },
  order: { describe: 'The sections in the order of playing.', parts: [order], clauses: {}, repeats: true },
  signs: { describe: 'The table by which signs are played.', parts: [signTable], clauses: {} },
  practice: { describe: 'A practice of rhythm for every reading.', parts: [practice], clauses: {}, repeats: true },
  table: {
    describe: 'A sign table of our own: how each sign is played.',
    parts: [given('table', 'the name of a sign table')],
    clauses: { from: { describe: 'The table from which it comes.', parts: [signTable] } },
    repeats: true,
    rows: {
      kind: 'sign',
      describe: 'A sign, the name that the table gives it, and how it is played.',
      parts: [
        free('shapes', 'shapes', 'a sign, or signs typed together, such as cb+ca'),
        free('name', 'string', "the table's name for it in quotes", optional),
      ],
      clauses: {
        when: {
          describe: 'Where the row fits.',
          parts: [
            words('a condition', {
              rising: 'the note before is lower',
              falling: 'the note before is higher',
              dotted: 'the note is dotted',
              short: 'the note is a quaver or shorter',
              'before rest': 'a rest follows',
              'before higher': 'the note after is higher',
              'before lower': 'the note after is lower',
              'before rising third': 'the note after is a third higher',
              'before falling third': 'the note after is a third lower',
              'slurred from above': 'a curve leads to it from the note above',
            }),
          ],
          repeats: true,
        },
        scope: { describe: 'What the sign covers.', parts: [words('an extent', { chord: 'the whole chord' })] },
      },
      recipe: true,
    },
  },
  note: {
    describe: 'A full annotation.',
    parts: [given('note', 'the name of an annotation')],
    clauses: {
      kind: {
        describe: 'What it is about.',
        parts: [
          words('a kind of annotation', {
            reading: 'what the source has, or how it can be read',
            emendation: 'the editor mends the source',
            pitch: 'pitch and accidentals',
            rhythm: 'values, bars and metre',
            ornament: 'signs',
            fingering: 'fingering',
            layout: 'beams, stems, clefs and the page',
            performance: 'how it is played',
          }),
        ],
      },
      by: { describe: 'Who says so.', parts: [cited('editor', 'the letters of an editor')] },
      certainty: {
        describe: 'How sure it is.',
        parts: [
          words('a degree of certainty', {
            high: 'hardly to be doubted',
            medium: 'likely',
            low: 'a guess',
            unknown: 'not weighed',
          }),
        ],
      },
      evidence: { describe: 'On what it rests.', parts: [free('text', 'string', 'the evidence in quotes')] },
      text: { describe: 'What is said.', opens: ':', parts: [free('text', 'string', 'the text in quotes')] },
    },
    repeats: true,
  },
  link: {
    describe: 'Places that are decided together.',
    parts: [
      cited('place', 'the name of a place'),
      free('other', 'name', 'the name of another place', { role: 'place', repeat: true }),
    ],
    clauses: {},
    repeats: true,
  },
};

// ─── changes in lanes ────────────────────────────────────────────────────────────────────────────────────────────

export const changes: Readonly<Record<string, ChangeEntry>> = {
  now: {
    describe: 'The source changes clef, signature, metre or tempo here.',
    parts: nothing,
    clauses: {
      clef: { describe: 'The clef drawn here, on the stave where the lane stands.', opens: 'clef', parts: [clefPart] },
      ...stateClauses,
    },
  },
  up: { describe: 'Goes on on the stave above.', parts: nothing, clauses: {} },
  down: { describe: 'Goes on on the stave below.', parts: nothing, clauses: {} },
  home: { describe: 'Returns to its own stave.', parts: nothing, clauses: {} },
  stems: {
    describe: 'Which way the stems point from here.',
    parts: [words('a direction', { up: 'upwards', down: 'downwards', home: 'as the voice has them' })],
    clauses: {},
  },
  manual: { describe: 'The manual from here.', parts: [cited('manual', 'the name of a manual')], clauses: {} },
  custos: {
    describe: 'The sign at the line end for the note with which the next line begins.',
    parts: [free('pitch', 'pitch', 'a note with its octave, such as c5')],
    clauses: {},
  },
  ending: {
    describe: 'The ending of this number begins.',
    parts: [free('number', 'whole', 'the number of the ending', { range: { low: 1, high: 99 } })],
    clauses: {},
  },
  section: {
    describe: 'A section begins.',
    parts: statements.section?.parts ?? nothing,
    clauses: {},
  },
  irregular: { describe: 'The bar is meant to be longer or shorter than its metre.', parts: nothing, clauses: {} },
};

// ─── recipes ─────────────────────────────────────────────────────────────────────────────────────────────────────

/** What a recipe can say, in the order in which it is said. */
export const recipeForms: Readonly<Record<string, string>> = {
  'on beat': 'It begins with the beat and takes its time from the note.',
  'before beat': 'It takes its time from the note before.',
  extends: "Begins with what another sign's row gives.",
  unresolved: 'The table names the sign, but how it is played is not known.',
  step: 'A step from the written note: 0 the note, +1 a step above, -1 a step below; +1# with a sharp.',
  repeated: 'What stands in the brackets goes on for the time there is.',
  for: 'The share of the value that it lasts.',
  leaned: 'It lasts as long as an appoggiatura there, or, before what is repeated, as the lean of a trill.',
  'a second': 'How many notes a second.',
  'a pulse': 'How many notes a pulse.',
  value: 'The written value of each note.',
  spread: 'The notes of the chord one after another, each held.',
  up: 'From the lowest.',
  down: 'From the highest.',
  filled: 'Between two notes a third apart the one between is struck in passing.',
  hold: 'The written note stands for this share of the value, or as long as the rest leaves.',
  rest: 'A silence to the end, or for this share of the value.',
};

// ─── looking up ──────────────────────────────────────────────────────────────────────────────────────────────────

/** The entry of a word, and nothing that every object inherits. */
export const lookUp = <Entry>(table: Readonly<Record<string, Entry>>, word: string): Entry | undefined =>
  Object.hasOwn(table, word) ? table[word] : undefined;

function* partPaths(path: string, parts: readonly Part[]): Generator<string> {
  for (const part of parts) {
    if (part.kind === 'free') yield `${path}/${part.id}`;
    else if (part.kind === 'either') for (const form of part.forms) yield* partPaths(path, form);
    else {
      for (const [word, entry] of Object.entries(part.words)) {
        yield `${path}/${word}`;
        yield* partPaths(`${path}/${word}`, entry.follow ?? nothing);
      }
    }
  }
}

function* clausePaths(path: string, clauses: Clauses): Generator<string> {
  for (const [name, clause] of Object.entries(clauses)) {
    yield `${path}/${name}`;
    yield* partPaths(`${path}/${name}`, clause.parts);
  }
}

function* entryPaths(path: string, entry: Pick<StatementEntry, 'parts' | 'clauses' | 'rows'>): Generator<string> {
  yield path;
  yield* partPaths(path, entry.parts);
  yield* clausePaths(path, entry.clauses);
  if (entry.rows === undefined) return;
  const row = `${path}/${entry.rows.kind}`;
  yield* entryPaths(row, { parts: entry.rows.parts, clauses: entry.rows.clauses });
  if (entry.rows.recipe) for (const form of Object.keys(recipeForms)) yield `${row}/recipe/${form}`;
}

/**
 * Every keyword, clause, word and part by its path (`reading/practice/overdot/shortest`, `(now)/clef`), as the
 * statement driver reports them when it meets them.
 */
export function vocabularyPaths(): string[] {
  const paths = new Set<string>();
  for (const [keyword, entry] of Object.entries(statements)) for (const p of entryPaths(keyword, entry)) paths.add(p);
  for (const [word, entry] of Object.entries(changes)) for (const p of entryPaths(`(${word})`, entry)) paths.add(p);
  return [...paths];
}
