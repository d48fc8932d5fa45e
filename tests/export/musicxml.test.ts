import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { unzipSync } from 'fflate';
import { parse, validate } from 'musicxml-io';
import { describe, expect, it } from 'vitest';
import { sentence } from '../../grammar/findings/word';
import { subtract, toNumber } from '../../grammar/time';
import { exportMusicXml, exportMxl, type MusicXmlOptions } from '../../server/export/musicxml';
import type { NoteMember } from '../../server/score/score';
import { eventsOf } from '../../server/score/walk';
import { readNotes, validateMusicXml } from '../helpers/musicxml';
import { testWithSchema } from '../helpers/schemas';
import { scoreOf } from '../helpers/scores';

// What each element and word means: MusicXML 4.0, W3C Music Notation Community Group, 2021, whose schema also judges whole
// files below. Onsets, values and pitches are found by musicxml-io, an independent reader. Which barline, clef or meter
// sign is drawn how is common practice.

const HEAD = `bentside 1

title   "Divisions in g"
source  K "Thornmere Keyboard Book, f. 12r"
source  L "Loose leaf kept with K"
reading plain "As the loose leaf has it"
  takes L
stave upper lines 5
stave lower lines 5
voice dessus upper stems up
voice taille upper stems down
voice basse  lower
`;

const SOURCE: MusicXmlOptions = { clefs: 'source', leaveGaps: false };

/** Two staves in common time, with the lanes given. */
const inC = (...lanes: string[]): string =>
  `${HEAD}\npage "12r"\nsystem upper G2 lower F4 meter C\n${lanes.map((lane) => `  ${lane}\n`).join('')}`;

function exported(text: string, options: Partial<MusicXmlOptions> & { reading?: string } = {}) {
  const { reading = 'written', ...rest } = options;
  return exportMusicXml(scoreOf(text, reading), { ...SOURCE, ...rest });
}

const musicXml = (text: string, options = {}): string => exported(text, options).text;
const codes = (text: string, options = {}): string[] => exported(text, options).problems.map((p) => p.problem.code);
const told = (text: string, options = {}): string[] =>
  exported(text, options).problems.map((p) => sentence(p.problem.code, p.problem.slots));

/** The elements of one name, each on one line without indentation. */
function elements(text: string, name: string): string[] {
  const found = text.match(new RegExp(`<${name}(?: [^>]*)?(?:/>|>[\\s\\S]*?</${name}>)`, 'g')) ?? [];
  return found.map((element) => element.replace(/\n\s*/g, ''));
}

/** The notes of a voice that have this pitch. */
const notesAt = (text: string, pitch: string): string[] => {
  const notes = elements(text, 'note');
  return readNotes(text).flatMap((note, i) => (note.pitch === pitch ? [notes[i] ?? ''] : []));
};

/** "measure:onset+duration pitch" of every note that an independent reader finds. */
const read = (text: string): string[] =>
  readNotes(musicXml(text)).map((n) => `${n.measure}:${n.onset}+${n.duration} ${n.pitch}`);

describe('the notes that another reader finds', () => {
  it('have their onsets, values and sounding pitches, voice by voice', () => {
    expect(read(inC('dessus | 4 g4 8 a b 2 c#5 |', 'basse | 2 g3 e |'))).toEqual([
      '1:0+0.25 g4',
      '1:0.25+0.125 a4',
      '1:0.375+0.125 b4',
      '1:0.5+0.5 c#5',
      '1:0+0.5 g3',
      '1:0.5+0.5 e3',
    ]);
  });

  it('stand on the staves where the source draws them', () => {
    const notes = readNotes(musicXml(inC('dessus | 2 g4 e |', 'basse | 2 g3 (up) c4 |')));
    expect(notes.map(({ staff, voice }) => `${voice} on ${staff}`)).toEqual(['1 on 1', '1 on 1', '3 on 2', '3 on 1']);
  });

  it('keep their lengths in triplets, dotted values and quintuplets', () => {
    const text = inC('dessus | {3in2 8 g4 a b} 8.. c5 32 d {5in4 16 e d c b4 a} r4 |'.replace('r4', '4 r'));
    expect(readNotes(musicXml(text)).reduce((sum, note) => sum + note.duration, 0)).toBeCloseTo(1, 12);
  });

  it('sound by the practice of accidentals and show only what is drawn', () => {
    const text = musicXml(inC('dessus | 4 f#4 f g f |'));
    expect(readNotes(text).map(({ pitch }) => pitch)).toEqual(['f#4', 'f#4', 'g4', 'f4']);
    expect(elements(text, 'accidental')).toEqual(['<accidental>sharp</accidental>']);
  });
});

describe('values', () => {
  it('reach from the maxima to the hundred and twenty-eighth', () => {
    const text = `${HEAD}\nsystem loose upper G2 lower F4\n  dessus | Mx g4 L g B g 1 g 2 g 4 g 8 g 16 g 32 g 64 g 128 g g |\n`;
    expect(elements(musicXml(text), 'type').slice(0, 11)).toEqual(
      ['maxima', 'long', 'breve', 'whole', 'half', 'quarter', 'eighth', '16th', '32nd', '64th', '128th'].map(
        (type) => `<type>${type}</type>`,
      ),
    );
  });

  // MusicXML 4.0, `tuplet` ("nested tuplets … each with its own actual and normal") and `time-modification` (the product).
  it('stand in tuplets within tuplets, each with its own figure, and last their product', () => {
    const text = musicXml(inC('dessus | {3in2 2 g4 {3in2 4 a b c5} 2 d5} |'));
    const [, inner] = elements(text, 'note');
    expect(inner).toContain('<actual-notes>9</actual-notes><normal-notes>4</normal-notes>');
    expect(elements(text, 'tuplet').map((one) => one.replace(/ show-number="actual"/, ''))).toEqual([
      '<tuplet type="start" number="1"><tuplet-actual><tuplet-number>3</tuplet-number><tuplet-type>half</tuplet-type></tuplet-actual><tuplet-normal><tuplet-number>2</tuplet-number><tuplet-type>half</tuplet-type></tuplet-normal></tuplet>',
      '<tuplet type="start" number="2"><tuplet-actual><tuplet-number>3</tuplet-number><tuplet-type>quarter</tuplet-type></tuplet-actual><tuplet-normal><tuplet-number>2</tuplet-number><tuplet-type>quarter</tuplet-type></tuplet-normal></tuplet>',
      '<tuplet type="stop" number="2"/>',
      '<tuplet type="stop" number="1"/>',
    ]);
    expect(readNotes(text).map(({ duration }) => duration.toFixed(4))).toEqual([
      '0.3333',
      '0.1111',
      '0.1111',
      '0.1111',
      '0.3333',
    ]);
  });

  it('keep their proportion on both sides of a barline', () => {
    const text = musicXml(inC("dessus | 2 g4 4x a b 2x c5'through | 4x d e f d e |"));
    const parts = notesAt(text, 'c5');
    expect(parts).toHaveLength(2);
    for (const part of parts) {
      expect(part).toContain('<type>quarter</type>');
      expect(part).toContain('<actual-notes>3</actual-notes><normal-notes>2</normal-notes>');
    }
    expect(parts.map((part) => elements(part, 'tie'))).toEqual([['<tie type="start"/>'], ['<tie type="stop"/>']]);
  });

  it('show the figure of a triplet where the source draws it and hide it where it does not', () => {
    const drawn = musicXml(inC('dessus | {3in2 4 g4 a b} 2 c5 |'));
    const hidden = musicXml(inC('dessus | 4x g4 a b 2 c5 |'));
    expect(elements(drawn, 'tuplet')[0]).toContain('show-number="actual"');
    expect(elements(hidden, 'tuplet')[0]).toContain('show-number="none"');
    expect(elements(hidden, 'time-modification')).toHaveLength(3);
  });

  it('are beamed at all levels, with hooks', () => {
    const text = musicXml(inC('dessus | 8. g4 16 a 16 b 8. c5 2 d |'));
    expect(notesAt(text, 'a4')[0]).toContain('<beam number="1">end</beam><beam number="2">backward hook</beam>');
    expect(notesAt(text, 'b4')[0]).toContain('<beam number="1">begin</beam><beam number="2">forward hook</beam>');
  });

  it('are cut and tied where a note runs through the barline', () => {
    const text = inC("dessus | 2 g4 2. a'through | 4 b 2 c5 |");
    expect(read(text)).toEqual(['1:0+0.5 g4', '1:0.5+0.5 a4', '2:0+0.25 a4', '2:0.25+0.25 b4', '2:0.5+0.5 c5']);
    const [first, second] = notesAt(musicXml(text), 'a4');
    expect(first).toContain('<tie type="start"/>');
    expect(second).toContain('<tie type="stop"/>');
    expect(codes(text)).toEqual(['musicxml-through']);
  });

  it('of small notes take no time and stand before their note, or after it at the end of a bar', () => {
    const text = inC('dessus | {small 16 g4 a} 1 b4 | 1 c5 {small 8 b4} |');
    expect(read(text)).toEqual(['1:0+0 g4', '1:0+0 a4', '1:0+1 b4', '2:0+1 c5', '2:1+0 b4']);
    expect(elements(musicXml(text), 'grace')).toEqual(['<grace/>', '<grace/>', '<grace steal-time-previous="12.5"/>']);
  });
});

describe('divisions', () => {
  it('serve the whole piece if that is not too much for a reader, else each measure', () => {
    const one = musicXml(inC('dessus | {3in2 4 c5 d e} 2 f | {5in4 4 c5 d e f g} |'));
    expect(elements(one, 'divisions')).toEqual(['<divisions>15</divisions>']);
    const odd = [7, 11, 13, 17, 19].map((n) => `{${n}in16 16 ${'c5 '.repeat(n)}}`);
    const many = musicXml(inC(`dessus | ${odd.join(' | ')} |`));
    expect(elements(many, 'divisions').map((d) => d.replace(/<[^>]+>/g, ''))).toEqual(['7', '11', '13', '17', '19']);
  });
});

// A walk over random music: what an independent reader finds is what the score says.
describe('any music', () => {
  const note = fc.constantFrom(
    'c5',
    'd5',
    "e5'zz",
    'f#5',
    'bb4',
    'c5-e-g',
    'r',
    '_',
    'g4=',
    "a4'u b'.",
    '{small 8 c5}',
  );
  const beat = fc.oneof(
    note.map((n) => `4 ${n}`.replace("a4'u b", "8 a4'u b").replace('4 {small 8 c5}', '4 {small 8 c5} 4 c5')),
    fc.tuple(fc.constantFrom('c5', 'e5', 'b4'), fc.constantFrom('d5', 'g4')).map(([a, b]) => `8 ${a} ${b}`),
    fc.constantFrom('8. c5 16 d5', '16 c5 d e f', '{3in2 8 c5 d e}', '8x c5 d5 e5', '{5in4 16 c5 d e d c}'),
  );
  const bar = fc.array(beat, { minLength: 4, maxLength: 4 }).map((beats) => beats.join(' '));
  const lanes = fc.integer({ min: 1, max: 4 }).chain((count) => {
    const lane = fc.array(bar, { minLength: count, maxLength: count }).map((bars) => `${bars.join(' | ')} |`);
    return fc.tuple(lane, lane);
  });
  const music = fc
    .array(lanes, { minLength: 1, maxLength: 2 })
    .map((systems) =>
      systems.map(
        ([a, b], i) => `system${i === 0 ? ' upper G2 lower F4 meter C' : ''}\n  dessus | ${a}\n  basse | ${b}\n`,
      ),
    )
    .map((systems) => `${HEAD}\n${systems.join('')}`);

  const spelt = ({ spelling, octave, alteration }: NoteMember): string =>
    spelling.letter + (alteration < 0 ? 'b'.repeat(-alteration) : '#'.repeat(alteration)) + octave;

  /** "voice bar:onset+duration pitch" of every note and rest of the score, each chord from first to last. */
  function said(text: string): string[] {
    const [piece] = scoreOf(text).pieces;
    return [...(piece === undefined ? [] : eventsOf(piece))].flatMap(({ event, bar, onset }) => {
      const at = `${event.voice + 1} ${bar.number}:${toNumber(subtract(onset, bar.onset))}+${toNumber(event.duration)}`;
      if (event.kind === 'rest') return [`${at} r`];
      return event.members.map((member) => `${at} ${spelt(member)}`);
    });
  }

  it('is read back as it was written', () => {
    fc.assert(
      fc.property(music, (text) => {
        const found = readNotes(musicXml(text)).map(
          (n) => `${n.voice} ${n.measure}:${n.onset}+${n.duration} ${n.pitch}`,
        );
        expect(found.sort()).toEqual(said(text).sort());
      }),
      { numRuns: 60 },
    );
  });

  testWithSchema('musicxml-4.0/musicxml.xsd', 'is valid MusicXML', async () => {
    const documents = fc.sample(music, { numRuns: 12, seed: 1689 }).map((text) => musicXml(text));
    for (const document of documents) expect(await validateMusicXml(document)).toEqual([]);
  });
});

describe('rests and what is not drawn', () => {
  it('write a rest for a drawn rest and only time for a gap', () => {
    const text = musicXml(inC('dessus | 2 r _ | rbar | __ |', 'basse | 1 g2 | 1 g | 1 g |'));
    expect(elements(text, 'rest')).toEqual(['<rest/>', '<rest measure="yes"/>']);
    expect(elements(text, 'forward').filter((forward) => forward.includes('<voice>1</voice>'))).toHaveLength(2);
  });

  it('move on over a lacuna and say so', () => {
    expect(codes(inC('dessus | 2 g4 lost 2 |'))).toEqual(['musicxml-lacuna']);
  });
});

describe('chords and ties', () => {
  it('tie each member by itself, over the end of a system too', () => {
    const text = `${inC('dessus | 1 c5=-e- g= |'.replace('- g', '-g'))}system\n  dessus | 1 c5-e-g |\n`;
    const notes = elements(musicXml(text), 'note');
    expect(notes.map((note) => (note.match(/<tie type="(\w+)"/)?.[1] ?? '-') as string)).toEqual([
      'start',
      '-',
      'start',
      'stop',
      '-',
      'stop',
    ]);
    expect(notes.filter((note) => note.includes('<chord/>'))).toHaveLength(4);
  });

  it("draw the editor's tie dashed", () => {
    expect(elements(musicXml(inC('dessus | 2 c5[=] c |')), 'tied')).toEqual([
      '<tied type="start" line-type="dashed"/>',
      '<tied type="stop" line-type="dashed"/>',
    ]);
  });

  // MusicXML 4.0, `tied-type`: "a tie leading into or out of a repeated section or coda" is a start and a stop at one note;
  // `tie` "indicates sound".
  it('lead from before the first ending into each ending alike', () => {
    const text = musicXml(inC('dessus ||: 2 c5 e= | (ending 1) 2 e c :|| (ending 2) 1 e |||'));
    const [before, first, second] = notesAt(text, 'e5');
    expect(before).toContain('<tie type="start"/>');
    expect(first).toContain('<tie type="stop"/>');
    expect(second).toContain('<tie type="stop"/>');
    expect(elements(second ?? '', 'tied')).toEqual(['<tied type="start"/>', '<tied type="stop"/>']);
    expect(readNotes(text).map(({ onset, duration, pitch }) => `${onset}+${duration} ${pitch}`)).toEqual([
      '0+0.5 c5',
      '0.5+0.5 e5',
      '0+0.5 e5',
      '0.5+0.5 c5',
      '0+1 e5',
    ]);
  });

  it('spread all notes of a chord under its arpeggio', () => {
    const text = musicXml(inC("dessus | 1 c5-e'arp-g |"));
    expect(elements(text, 'arpeggiate')).toHaveLength(3);
  });
});

describe('curves', () => {
  it('have different numbers where they overlap, in one voice or in two', () => {
    const text = musicXml(inC("dessus | 4 g4'u a'u b'. c5'. |", "taille | 4 e4'u f g a'. |"));
    expect(new Set(elements(text, 'slur').map((slur) => slur.match(/number="(\d+)"/)?.[1]))).toEqual(
      new Set(['1', '2', '3']),
    );
  });

  it('end within their bar where the source does not show the end', () => {
    const text = inC("dessus | 4 g4'u~ a b c5 |");
    expect(elements(musicXml(text), 'slur')).toHaveLength(2);
    expect(notesAt(musicXml(text), 'c5')[0]).toContain('<slur type="stop"');
    expect(codes(text)).toEqual(['musicxml-curve-open']);
  });

  it('that lead from a note to the last barline find no second note, and are told by their voice', () => {
    const text = inC("dessus | 2 c5 d'u |||'.");
    expect(told(text)).toEqual(['A curve of dessus finds no two notes to join and is not in the export (bar 1).']);
  });

  it('that end on a barline at the end of a system name their voice and bar', () => {
    const text = `${inC("dessus | 1 c5 | 2 d'u e |'.")}system\n  dessus | 1 f5 |\n`;
    expect(told(text)).toContain(
      'A curve of dessus that begins or ends where no note stands is drawn to the nearest note (bar 2).',
    );
  });

  it('may end in another voice than they began in', () => {
    const text = musicXml(inC("dessus | 2 c5'u(q1) d |", "taille | 2 e4 f'.(q1) |"));
    expect(notesAt(text, 'c5')[0]).toContain('<slur type="start" number="1"/>');
    expect(notesAt(text, 'f4')[0]).toContain('<slur type="stop" number="1"/>');
  });

  it('cross the barline', () => {
    const text = musicXml(inC("dessus | 2 g4 a'u | 2 b'. c5 |"));
    expect(notesAt(text, 'a4')[0]).toContain('<slur type="start" number="1"/>');
    expect(notesAt(text, 'b4')[0]).toContain('<slur type="stop" number="1"/>');
  });
});

// `other-notation` is for "any notations not yet in the MusicXML format" (MusicXML 4.0).
describe('straight lines', () => {
  it('lead from note to note and are no slides, whatever curves stand beside them', () => {
    const text = musicXml(`${HEAD}\nsystem free upper G2 lower F4\n  dessus | c5'line e'u g'. c6'. |||\n`);
    expect(elements(text, 'other-notation')).toEqual([
      '<other-notation type="start" number="1">line</other-notation>',
      '<other-notation type="stop" number="1">line</other-notation>',
    ]);
    expect(notesAt(text, 'c6')[0]).toContain('<other-notation type="stop"');
    expect(elements(text, 'slur')).toHaveLength(2);
    expect(elements(text, 'slide')).toEqual([]);
  });
});

describe('marks', () => {
  it('have the element of MusicXML that draws them, or the glyph by its name', () => {
    const text = musicXml(inC("dessus | 4 g4'zz a'turn b'cb c5'tr |"));
    expect(elements(text, 'ornaments')).toEqual([
      '<ornaments><inverted-mordent/></ornaments>',
      '<ornaments><turn/></ornaments>',
      '<ornaments><other-ornament smufl="ornamentRightFacingHalfCircle">cb</other-ornament></ornaments>',
      '<ornaments><trill-mark/></ornaments>',
    ]);
  });

  it('keep the accidental of a sign with the sign and that of a note with the note', () => {
    const text = musicXml(inC("dessus | 2 g4'zz'# f'[#] |"));
    expect(notesAt(text, 'g4')[0]).toContain(
      '<ornaments><inverted-mordent/><accidental-mark placement="above">sharp</accidental-mark></ornaments>',
    );
    expect(elements(text, 'accidental-mark')[1]).toBe(
      '<accidental-mark bracket="yes" placement="above">sharp</accidental-mark>',
    );
  });

  it("tell the editor's accidental and the cautionary one from the source's", () => {
    expect(elements(musicXml(inC('dessus | 2 f[#]4 g(n) |')), 'accidental')).toEqual([
      '<accidental editorial="yes" bracket="yes">sharp</accidental>',
      '<accidental cautionary="yes" parentheses="yes">natural</accidental>',
    ]);
  });

  it('write fingers, substitutions, dots, strokes and fermatas', () => {
    const text = musicXml(inC("dessus | 4 g4'3 a'4-5 b'dot c5'stroke'fermata |"));
    expect(elements(text, 'fingering')).toEqual([
      '<fingering>3</fingering>',
      '<fingering>4</fingering>',
      '<fingering substitution="yes">5</fingering>',
    ]);
    expect(elements(text, 'articulations')).toEqual([
      '<articulations><staccato/></articulations>',
      '<articulations><staccatissimo/></articulations>',
    ]);
    expect(elements(text, 'fermata')).toEqual(['<fermata type="upright"/>']);
  });

  // "The number attribute can be used to distinguish between two simultaneous chords arpeggiated separately (different
  // numbers) or together (same number)" (MusicXML 4.0, `arpeggiate`).
  it('spread the chords of two staves by one arpeggio, or each by its own', () => {
    const numbers = (sign: string): string[] =>
      elements(musicXml(inC(`dessus | 1 c5-e'${sign} |`, `basse | 1 c3-g'${sign} |`)), 'arpeggiate');
    expect(new Set(numbers('arp+'))).toEqual(new Set(['<arpeggiate number="1"/>']));
    expect(numbers('arp+')).toHaveLength(4);
    expect(new Set(numbers('arp'))).toEqual(new Set(['<arpeggiate number="2"/>', '<arpeggiate number="4"/>']));
  });

  it('drawn once across two lanes stand once in the export', () => {
    const text = inC("dessus | 1 c5'turn+ |", "basse | 1 c3'turn+ |");
    expect(elements(musicXml(text), 'turn')).toHaveLength(1);
    expect(notesAt(musicXml(text), 'c5')[0]).toContain('<turn/>');
    expect(told(text)).toEqual(['A sign drawn across several voices stands in the export at dessus alone (bar 1).']);
  });

  it("keep the editor's signs apart by an editorial level and tell it once", () => {
    const text = inC("dessus | 2 g4'[zz]'tr a'[zz] |");
    expect(elements(musicXml(text), 'notations')[1]).toContain('<level bracket="yes">editor\'s</level>');
    expect(told(text)).toEqual(["The editor's marks in dessus (bar 1) look like the source's in most programs."]);
  });

  it('limited to a reading are written in that reading only', () => {
    const text = inC("dessus | 1 g4'zz:plain |");
    expect(elements(musicXml(text), 'inverted-mordent')).toHaveLength(0);
    expect(elements(musicXml(text, { reading: 'plain' }), 'inverted-mordent')).toHaveLength(1);
    expect(codes(text, { reading: 'plain' })).toEqual(['musicxml-readings']);
  });

  it('cross a barline into each ending, in a further one from its first note', () => {
    const text = inC("dessus ||: 2 g4 a'u | (ending 1) 2 b c5'. :|| (ending 2) 2 d5 e'. |||");
    expect(notesAt(musicXml(text), 'a4')[0]).toContain('<slur type="start" number="1"/>');
    expect(notesAt(musicXml(text), 'c5')[0]).toContain('<slur type="stop" number="1"/>');
    expect(notesAt(musicXml(text), 'd5')[0]).toContain('<slur type="start" number="1"/>');
    expect(notesAt(musicXml(text), 'e5')[0]).toContain('<slur type="stop" number="1"/>');
    expect(told(text)).toEqual([
      'A curve of dessus that leads into a further ending begins with that ending in the export (bar 2b).',
    ]);
  });
});

// `footnote` and `level` are MusicXML's group `editorial`: "editorial information for a musical element"; each note of a
// passage bears its level, what is said of a passage stands at its first note.
describe('what editors and hands did', () => {
  const layers = (music: string): string =>
    musicXml(inC(music).replace('reading plain', 'hand K.2 "paler ink"\nreading plain'));

  it('stands as a level at each note of a passage, with the hand that did it', () => {
    expect(elements(layers('dessus | {unclear 4 g4} {deleted:K a} {added:K.2 b} {supplied c5} |'), 'level')).toEqual([
      '<level>unclear in the source</level>',
      '<level>deleted in K</level>',
      '<level>added in K.2 (paler ink)</level>',
      '<level bracket="yes">supplied by the editor</level>',
    ]);
  });

  it('is told once a voice', () => {
    expect(told(inC('dessus | 2 g4*"blotted" a\'zz*"added later" |'))).toEqual([
      'The annotations of dessus (bar 1) stand in the export as footnotes, which few programs show.',
    ]);
  });

  it.each([
    ['a note', 'dessus | 2 g4*"blotted" a |', ['blotted']],
    ['a note of a chord', 'dessus | 1 c5-e*"erased"-g |', ['erased']],
    ['a sign', 'dessus | 1 a4\'zz*"added later" |', ['added later']],
    ['a curve', 'dessus | 2 a4\'u*"faint" b\'. |', ['faint']],
    ['a rest', 'dessus | 2 a4 r*"a dot?" |', ['a dot?']],
    ['a gap', 'dessus | 2 a4 _*"space left" |', ['space left']],
    ['a span', 'dessus | {unclear 4 g4 a}*"water stain" 2 b |', ['water stain']],
    ['a tuplet', 'dessus | {3in2 4 g4 a b}*"no figure" 2 b |', ['no figure']],
    ['a place', 'dessus | <v1*"blot" K: 2 g4 ; L: 2 a4>*"no blot in L" 2 b4 |', ['blot', 'no blot in L']],
    ['the barline', 'dessus | 1 g4 |*"smudged" 1 a |', ['smudged']],
    ['the first barline', 'dessus |*"drawn twice" 1 g4 |', ['drawn twice']],
  ])('has a footnote for what is said of %s', (_, music, footnotes) => {
    expect(elements(musicXml(inC(music)), 'footnote').map((one) => one.replace(/<[^>]+>/g, ''))).toEqual([
      footnotes.join('; '),
    ]);
    expect(codes(inC(music))).toContain('musicxml-annotation');
  });

  it('says all that a note of the editor says, and who the editor is', () => {
    const note =
      'editor MK "The editor of the book"\nnote n1 kind pitch by MK certainty low evidence "the ink" : "perhaps c"\n';
    const text = musicXml(`${note}${inC('dessus | 1 g4*n1 |')}`);
    expect(elements(text, 'footnote')).toEqual([
      '<footnote>perhaps c (pitch, MK, certainty low, evidence: the ink)</footnote>',
    ]);
    expect(elements(text, 'creator')).toEqual(['<creator type="editor">MK: The editor of the book</creator>']);
  });

  // Editions draw a bracket over the notes of a ligature (from memory: the practice of collected editions).
  it('brackets the notes of each ligature', () => {
    const text = musicXml(
      `${HEAD}\nsystem loose upper G2 lower F4\n  dessus | {lig B c5 d} {lig B e f} {black 3in2 1 c5 d e} |||\n`,
    );
    const order = [...text.matchAll(/<bracket type="(\w+)"|<step>(\w)</g)].map(([, bracket, step]) => bracket ?? step);
    expect(order).toEqual(['start', 'C', 'D', 'stop', 'start', 'E', 'F', 'stop', 'C', 'D', 'E']);
    expect(elements(text, 'notehead')).toEqual(Array(3).fill('<notehead filled="yes">normal</notehead>'));
  });
});

describe('what stands at the head of a system', () => {
  const withHead = (head: string, staves = HEAD): string => `${staves}\nsystem ${head}\n  dessus | 1 c5 |\n`;

  it('writes the clefs of the source, or a treble and a bass clef in their place', () => {
    const text = withHead('upper C1 lower F3 meter C');
    const clefs = (options = {}) => elements(musicXml(text, options), 'clef').map((c) => c.replace(/<[^>]+>/g, ''));
    expect(clefs()).toEqual(['C1', 'F3']);
    expect(clefs({ clefs: 'modern' })).toEqual(['G2', 'F4']);
    expect(elements(musicXml(text, { clefs: 'modern' }), 'miscellaneous-field')).toContain(
      '<miscellaneous-field name="clefs-of-the-source">upper C1, lower F3</miscellaneous-field>',
    );
  });

  it('writes the number of lines where it is not five, but not beside modern clefs', () => {
    const text = withHead('upper C1 lower F4 meter C', HEAD.replace('upper lines 5', 'upper lines 6'));
    expect(elements(musicXml(text), 'staff-lines')).toEqual(['<staff-lines>6</staff-lines>']);
    expect(elements(musicXml(text, { clefs: 'modern' }), 'staff-lines')).toEqual([]);
  });

  it.each([
    ['key bb', '<key><fifths>-1</fifths></key>'],
    ['key f# c#', '<key><fifths>2</fifths></key>'],
    ['key f#', '<key><fifths>1</fifths></key>'],
    ['key eb', '<key><key-step>E</key-step><key-alter>-1</key-alter><key-accidental>flat</key-accidental></key>'],
  ])('writes the signature %s', (key, expected) => {
    expect(elements(musicXml(withHead(`upper G2 lower F4 ${key} meter C`)), 'key')).toEqual([expected]);
  });

  it.each([
    ['C', '<time symbol="common"><beats>4</beats><beat-type>4</beat-type></time>'],
    ['cut-C = 2/2', '<time symbol="cut"><beats>2</beats><beat-type>2</beat-type></time>'],
    ['2', '<time symbol="single-number"><beats>2</beats><beat-type>2</beat-type></time>'],
    ['4/4', '<time><beats>4</beats><beat-type>4</beat-type></time>'],
  ])('writes the meter %s', (meter, expected) => {
    expect(elements(musicXml(withHead(`upper G2 lower F4 meter ${meter}`)), 'time')).toEqual([expected]);
  });

  it('says when two clefs stand on one stave or a meter has no sign in MusicXML', () => {
    expect(
      told(withHead('upper G2 lower F4+C6 meter O = 4/4', HEAD.replace('lower lines 5', 'lower lines 6'))),
    ).toEqual([
      'Of F4+C6 on the stave lower most programs draw F4 alone.',
      'MusicXML cannot draw the metre O; the export has 4/4.',
    ]);
  });

  // "The additional attribute is set to yes … when there are multiple clefs present simultaneously on one staff"
  // (MusicXML 4.0, `clef`).
  it('writes the upper of two clefs on one stave as an additional one', () => {
    const text = withHead('upper G2 lower F4+C6 meter C', HEAD.replace('lower lines 5', 'lower lines 6'));
    expect(elements(musicXml(text), 'clef')).toEqual([
      '<clef number="1"><sign>G</sign><line>2</line></clef>',
      '<clef number="2"><sign>F</sign><line>4</line></clef>',
      '<clef number="2" additional="yes"><sign>C</sign><line>6</line></clef>',
    ]);
  });

  it('has no meter in free music', () => {
    const text = musicXml(`${HEAD}\nsystem free upper G2 lower F4\n  dessus | c5 d (down) g3 |\n`);
    expect(elements(text, 'time')).toEqual(['<time print-object="no"><senza-misura></senza-misura></time>']);
    expect(text).toContain('<measure number="1" implicit="yes">');
  });

  // "print-object" hides a sign that the source does not draw (MusicXML 4.0, `print-object`): readers take the length of a
  // measure from its `time`.
  it('counts the measures of loose music by what they hold and draws the sign once', () => {
    const text = `${HEAD}\nsystem loose upper G2 lower F4 meter C\n  dessus | 1 c5 2 d | 2. e | 1 f |||\n`;
    expect(elements(musicXml(text), 'time')).toEqual([
      '<time symbol="common"><beats>6</beats><beat-type>4</beat-type></time>',
      '<time print-object="no"><beats>3</beats><beat-type>4</beat-type></time>',
      '<time symbol="common" print-object="no"><beats>4</beats><beat-type>4</beat-type></time>',
    ]);
  });

  it('draws a fraction as it stands before a loose bar of another length, and says so', () => {
    const text = `${HEAD}\nsystem loose upper G2 lower F4 meter 3/4\n  dessus | 1 c5 | 2. e |||\n`;
    expect(elements(musicXml(text), 'time')).toEqual(['<time><beats>3</beats><beat-type>4</beat-type></time>']);
    expect(told(text)).toEqual([
      'The metre 3/4 is drawn before bar 1 of another length; some programs find fault with such a measure.',
    ]);
  });

  it('draws naturals that take a signature away', () => {
    const text = musicXml(
      `${inC('dessus | 1 c5 |').replace('meter C', 'key bb eb meter C')}system key bn en\n  dessus | 1 c5 |\n`,
    );
    expect(elements(text, 'key')[1]).toBe('<key><cancel>-2</cancel><fifths>0</fifths></key>');
  });

  it('keeps the octave of a sign drawn twice', () => {
    expect(elements(musicXml(withHead('upper G2 lower F4 key bb4 bb5 meter C')), 'key-octave')).toEqual([
      '<key-octave number="1">4</key-octave>',
      '<key-octave number="2">5</key-octave>',
    ]);
  });

  it('changes the clef within a bar at its moment', () => {
    const text = musicXml(inC('dessus | 2 c5 d |', 'basse | 2 c3 (now C3) e4 |'));
    const measure = elements(text, 'measure')[0] ?? '';
    expect(measure.indexOf('<sign>C</sign>')).toBeGreaterThan(measure.indexOf('<step>C</step><octave>3</octave>'));
    expect(measure.indexOf('<sign>C</sign>')).toBeLessThan(measure.indexOf('<step>E</step><octave>4</octave>'));
  });
});

describe('barlines', () => {
  it('are drawn as in the source, with repeats on the sides that repeat', () => {
    const text = musicXml(inC('dessus ||: 1 c5 :||: 1 d :|| 1 e || 1 f |||'));
    expect(elements(text, 'barline')).toEqual([
      '<barline location="left"><bar-style>heavy-light</bar-style><repeat direction="forward"/></barline>',
      '<barline location="right"><bar-style>light-heavy</bar-style><repeat direction="backward"/></barline>',
      '<barline location="left"><bar-style>heavy-light</bar-style><repeat direction="forward"/></barline>',
      '<barline location="right"><bar-style>light-heavy</bar-style><repeat direction="backward"/></barline>',
      '<barline location="right"><bar-style>light-light</bar-style></barline>',
      '<barline location="right"><bar-style>light-heavy</bar-style></barline>',
    ]);
  });

  it('bracket first and second endings', () => {
    const text = musicXml(inC('dessus ||: 1 c5 | (ending 1) 1 d :|| (ending 2) 1 e |||'));
    expect(elements(text, 'ending')).toEqual([
      '<ending number="1" type="start"/>',
      '<ending number="1" type="stop"/>',
      '<ending number="2" type="start"/>',
      '<ending number="2" type="stop"/>',
    ]);
  });

  it('carry their fermatas, references and notes', () => {
    const text = musicXml(inC("dessus | 1 c5 |'fermata 1 d ||'renvoi*\"smudged\" 1 e |||'fin"));
    expect(elements(text, 'barline')).toEqual([
      '<barline location="right"><fermata type="upright"/></barline>',
      '<barline location="right"><bar-style>light-light</bar-style><footnote>smudged</footnote><segno/></barline>',
      '<barline location="right"><bar-style>light-heavy</bar-style></barline>',
    ]);
    expect(text).toContain('<words>Fin</words>');
  });

  // MusicXML 4.0, `right-left-middle`: a barline may stand in the middle of a measure; `bar-style` "short" is one that does
  // not cross the whole staff.
  it('that one voice alone draws in a loose system stand short inside the measure and name the voice', () => {
    const text = `${HEAD}\nsystem loose upper G2 lower F4\n  dessus | 1 c5 | 1 d |||\n  basse | 2 c3 c 1 d |||\n`;
    const [measure, ...others] = elements(musicXml(text), 'measure');
    expect(others).toEqual([]);
    expect(elements(measure ?? '', 'barline')).toEqual([
      '<barline location="middle"><bar-style>short</bar-style><footnote>drawn in dessus only</footnote></barline>',
      '<barline location="right"><bar-style>light-heavy</bar-style></barline>',
    ]);
    const found = measure?.indexOf('location="middle"') ?? 0;
    expect(found).toBeGreaterThan(measure?.indexOf('<step>C</step>') ?? 0);
    expect(found).toBeLessThan(measure?.indexOf('<step>D</step>') ?? 0);
    expect(told(text)).toEqual(['A barline that only dessus draws crosses all staves in the export (bar 1).']);
  });

  it('number an upbeat 0 and hide its number', () => {
    expect(musicXml(inC('dessus | 4 g4 | 1 c5 |||'))).toContain('<measure number="0" implicit="yes">');
  });
});

describe('the order of the page', () => {
  const twoSystems = `${inC('dessus | 1 c5 |')}page "12v"\nsystem\n  dessus | 1 d5 |\nsystem\n  dessus | 1 e5 |\n`;

  it('begins systems and pages where the source does', () => {
    expect(elements(musicXml(twoSystems), 'print')).toEqual([
      '<print page-number="12r"/>',
      '<print new-page="yes" page-number="12v"/>',
      '<print new-system="yes"/>',
    ]);
  });

  it('breaks after a bar in which the source breaks, and says so', () => {
    const text = `${inC('dessus | 1 c5 | 2 c5')}system\n  dessus | 2 d5 | 1 e5 |\n`;
    expect(elements(musicXml(text), 'measure').map((measure) => measure.includes('<print new-system'))).toEqual([
      false,
      false,
      true,
    ]);
    expect(told(text)).toEqual(['A system of the source ends inside bar 2; the export breaks after that bar.']);
  });

  // The glyph is SMuFL's "Mensural custos up"; `other-direction` is for "any direction symbols not yet in the MusicXML format".
  it('shows the custos after the last note of its line, by its glyph and its note', () => {
    const measure = elements(musicXml(inC('dessus | 2 c5 e (custos f5) |')), 'measure')[0] ?? '';
    const custos = '<other-direction smufl="mensuralCustosUp">custos f5</other-direction>';
    expect(measure.indexOf(custos)).toBeGreaterThan(measure.indexOf('<step>E</step>'));
  });

  // "Ties that are visually attached to only one note … should be specified with two tied elements on the same note, first
  // type start then type stop" (MusicXML 4.0, `tied`).
  it('draws ties that lead into and out of the bars wanted at their one note, and lets it sound alone', () => {
    const text = musicXml(inC('dessus | 1 c5= | 1 c5= | 1 c5 |'), { bars: { from: '2', to: '2' } });
    const lone = ['<tied type="start"/>', '<tied type="stop"/>'];
    expect(elements(text, 'tied')).toEqual([...lone, ...lone]);
    expect(elements(text, 'tie')).toEqual([]);
  });

  it('puts one piece after another with its title and a final barline between', () => {
    const text = musicXml(
      `${HEAD}\npiece "Allemande"\nsystem upper G2 lower F4 meter C\n  dessus | 1 c5 |\npiece "Gigue"\nsystem upper G2 lower F4 meter 6/4\n  dessus | 1. d5 |||\n`,
    );
    expect(elements(text, 'words').map((words) => words.replace(/<[^>]+>/g, ''))).toEqual(['Allemande', 'Gigue']);
    expect(elements(text, 'bar-style')).toEqual([
      '<bar-style>light-heavy</bar-style>',
      '<bar-style>light-heavy</bar-style>',
    ]);
  });

  it('gives some bars with all that is in force in them', () => {
    const text = inC("dessus | 1 c5 | 1 d'u | (now key bb) 1 e | 1 f'. | 1 g |");
    const part = musicXml(text, { bars: { from: '3', to: '4' } });
    expect(elements(part, 'measure').map((m) => m.match(/number="(\w+)"/)?.[1])).toEqual(['3', '4']);
    expect(elements(part, 'fifths')).toEqual(['<fifths>-1</fifths>']);
    expect(elements(part, 'slur').map((slur) => slur.match(/type="(\w+)"/)?.[1])).toEqual(['start', 'stop']);
  });

  it('gives some bars of every piece that has them, and names the pieces that have not', () => {
    const gigue = 'piece "Gigue"\nsystem upper G2 lower F4 meter C\n  dessus | 1 g4 | 1 a4 |\n';
    const air = 'piece "Air"\nsystem upper G2 lower F4 meter C\n  dessus | 1 f4 |\n';
    const text = `${inC('dessus | 1 c5 | 1 d |')}${gigue}${air}`;
    expect(readNotes(musicXml(text, { bars: { from: '2', to: '2' } })).map(({ pitch }) => pitch)).toEqual(['d5', 'a4']);
    expect(told(text, { bars: { from: '2', to: '2' } })).toContain(
      'The piece “Air” does not have bar 2 and is not in the export.',
    );
  });
  it('refuses bars that are not there', () => {
    expect(told(inC('dessus | 1 c5 |'), { bars: { from: '3', to: '4' } })).toEqual(['No piece has bars 3 to 4.']);
  });
});

// MusicXML 4.0: `sound` ("dalsegno … backwards jumps to a segno sign", "forward-repeat … indicates that a forward repeat
// sign is implied but not displayed", "time-only"), `repeat` ("times … the number of times the repeated section is played").
describe('the order of playing', () => {
  const two = (order: string, barline = ':||'): string =>
    `${HEAD}\n${order}\nsection A\nsystem upper G2 lower F4 meter C\n  dessus | 1 c5 | d :||\nsection B\nsystem\n  dessus | 1 e5 | (section petite in B) f | c ${barline}\n`;
  const sounds = (text: string): string[] =>
    elements(musicXml(text), 'measure').flatMap((measure) =>
      elements(measure, 'sound').map((sound) => `${measure.match(/number="(\w+)"/)?.[1]} ${sound}`),
    );

  it('is that of the drawn repeats, a repeat that no sign begins among them', () => {
    const text = two('order A A B B');
    expect(sounds(text)).toEqual(['3 <sound forward-repeat="yes"/>']);
    expect(codes(text)).toEqual([]);
  });

  it('goes back to a petite reprise after the last time through its section', () => {
    const text = two('order A A B B petite');
    expect(sounds(text)).toEqual([
      '3 <sound forward-repeat="yes"/>',
      '4 <sound segno="petite"/>',
      '5 <sound dalsegno="petite" time-only="2"/>',
    ]);
    expect(elements(musicXml(text), 'words')).toEqual(['<words>[A A B B petite]</words>']);
    expect(codes(text)).toEqual([]);
  });

  it('goes back to the beginning and ends with the first section', () => {
    expect(sounds(two('order A A B A', '|||'))).toEqual(['2 <sound fine="yes"/>', '5 <sound dacapo="yes"/>']);
  });

  it('plays a strain three times', () => {
    const text = two('order A A A B B');
    expect(elements(musicXml(text), 'repeat')).toEqual([
      '<repeat direction="backward" times="3"/>',
      '<repeat direction="backward"/>',
    ]);
    expect(codes(text)).toEqual([]);
  });

  it('plays a repeated strain once', () => {
    expect(elements(musicXml(two('order A B')), 'repeat')).toEqual([
      '<repeat direction="backward" times="1"/>',
      '<repeat direction="backward" times="1"/>',
    ]);
  });

  it('stands as words where repeats cannot play it, and is told', () => {
    const text = two('order A B A B');
    expect(elements(musicXml(text), 'words')).toEqual(['<words>[A B A B]</words>']);
    expect(told(text)).toEqual([
      'The order A B A B stands in the export as words alone; programs play the repeats as they are drawn.',
    ]);
  });

  it('of a reading is that of the piece whose sections it names', () => {
    const text = `${two('reading once "Each half once"\n  order A B')}piece "Double"\nsystem upper G2 lower F4 meter C\n  dessus | 1 c5 |||\n`;
    const xml = musicXml(text, { reading: 'once' });
    expect(elements(xml, 'words').map((words) => words.replace(/<[^>]+>/g, ''))).toEqual(['[A B]', 'Double']);
    expect(codes(text, { reading: 'once' })).toEqual(['musicxml-pieces']);
  });

  it('does not lead from one piece into another, whose bars have numbers of their own', () => {
    const text = `${HEAD}\npiece "Gavotte"\nsystem upper G2 lower F4 meter C\n  dessus | 1 c5 | d |||\npiece "Double"\nsystem upper G2 lower F4 meter C\n  dessus | 1 e5 | f :||\n`;
    expect(musicXml(text).match(/<measure [^>]*>/g)).toEqual([
      '<measure number="1">',
      '<measure number="2">',
      '<measure number="2-1" text="1">',
      '<measure number="2-2" text="2">',
    ]);
    expect(elements(elements(musicXml(text), 'measure')[2] ?? '', 'sound')).toEqual(['<sound forward-repeat="yes"/>']);
    expect(told(text)).toEqual([
      'MusicXML holds one piece a file; the export has the pieces of this file one after another.',
    ]);
  });
});

describe('bars whose time is wrong', () => {
  const broken = inC('dessus | 1 c5 | 2 c5 | 1 e |', 'basse | 1 c3 | 1 c | 1 c |');

  it('are refused', () => {
    expect(exported(broken)).toMatchObject({ text: '', problems: [{ problem: { code: 'export-broken-bar' } }] });
  });

  it('bring their clefs and meters all the same', () => {
    const text = inC('dessus | 1 c5 | 2 c5 (now C1) | 1 e |', 'basse | 1 c3 | 1 c | 1 c |');
    expect(elements(musicXml(text, { leaveGaps: true }), 'clef').map((c) => c.replace(/<[^>]+>/g, ''))).toEqual([
      'G2',
      'F4',
      'C1',
    ]);
  });

  it('give nothing of what is too much in them to the bar that follows', () => {
    const tooLong = inC('dessus | 1 c5 | 2 d e f | 1 g4 |', 'basse | 1 c3 | 1 d | 1 e |');
    const read = readNotes(musicXml(tooLong, { leaveGaps: true }));
    expect(read.map(({ measure, pitch }) => `${measure} ${pitch}`)).toEqual(['1 c5', '1 c3', '3 g4', '3 e3']);
  });

  it('become empty time if gaps are wanted', () => {
    const { text, problems } = exported(broken, { leaveGaps: true });
    expect(readNotes(text).filter(({ measure }) => measure === '2')).toEqual([]);
    expect(problems.map((p) => sentence(p.problem.code, p.problem.slots))).toEqual([
      'The time of bar 2 is wrong; the export has an empty bar there.',
    ]);
  });
});

describe('words, figures and song', () => {
  it('stand above or below as the source has them', () => {
    const text = musicXml(inC('dessus | "Gravement" 2 c5 (below "tr.") d |'));
    expect(
      elements(text, 'direction').map((d) => [d.match(/placement="(\w+)"/)?.[1], d.match(/<words>(.*)<\/words>/)?.[1]]),
    ).toEqual([
      ['above', 'Gravement'],
      ['below', 'tr.'],
    ]);
  });

  it('give the tempo of the reading, its own or that on which it is built', () => {
    const text = inC('dessus | 1 c5 | 1 d |')
      .replace(
        'reading plain',
        'tempo 4 at 80\nreading slow\n  tempo 2 at 30\nreading late from slow\n  takes L\nreading plain',
      )
      .replace('1 d', '(now tempo 4 at 90) 1 d');
    const tempi = (reading: string): string[] =>
      elements(musicXml(text, { reading }), 'sound').map((sound) => /tempo="(.*)"/.exec(sound)?.[1] ?? '');
    expect(tempi('slow')).toEqual(['60', '90']);
    expect(tempi('late')).toEqual(['60', '90']);
    expect(tempi('plain')).toEqual(['80', '90']);
    expect(tempi('written')).toEqual(['80', '90']);
    const head = text.replace('meter C', 'meter C tempo 4 at 100').replace('tempo 4 at 80\n', '');
    expect(elements(musicXml(head, { reading: 'late' }), 'sound')[0]).toContain('"60"');
  });
  it('give the tempo to the eye and to players', () => {
    const text = musicXml(inC('dessus | 1 c5 |').replace('stave upper', 'tempo 2 at 50\nstave upper'));
    expect(elements(text, 'direction')[0]).toContain(
      '<beat-unit>half</beat-unit><per-minute>50</per-minute></metronome></direction-type><sound tempo="100"/>',
    );
  });

  it('set figures before the note that bears them', () => {
    const text = musicXml(inC('basse | 2 g2 a |', '  fig | 6/4 5,6 |'));
    expect(elements(text, 'figured-bass')).toEqual([
      '<figured-bass><figure><figure-number>6</figure-number></figure><figure><figure-number>4</figure-number></figure></figured-bass>',
      '<figured-bass><figure><figure-number>5</figure-number></figure><duration>1</duration></figured-bass>',
      '<figured-bass><figure><figure-number>6</figure-number></figure><duration>1</duration></figured-bass>',
    ]);
  });

  // MusicXML 4.0: `figured-bass` ("figures are ordered from top to bottom", "the optional duration element is used to
  // indicate changes of figures under a note"), `figure` (prefix before, suffix after or through the figure, extend).
  it('set strokes, accidentals on either side, brackets and lines of figures', () => {
    const text = musicXml(inC('basse | 4 g2 a b c3 |', '  fig | 6+/b3 #6/4# [7]/5 = |'));
    expect(elements(text, 'figure')).toEqual([
      '<figure><figure-number>6</figure-number><suffix>slash</suffix></figure>',
      '<figure><prefix>flat</prefix><figure-number>3</figure-number></figure>',
      '<figure><prefix>sharp</prefix><figure-number>6</figure-number></figure>',
      '<figure><figure-number>4</figure-number><suffix>sharp</suffix></figure>',
      '<figure><figure-number>7</figure-number><extend type="start"/><level bracket="yes">editor\'s</level></figure>',
      '<figure><figure-number>5</figure-number><extend type="start"/></figure>',
      '<figure><extend type="stop"/></figure>',
      '<figure><extend type="stop"/></figure>',
    ]);
  });

  it('hold on only what has begun: a line has its start before its stop', () => {
    const text = musicXml(inC('basse | 4 g2 a b c3 |', '  fig | = _ 6 = |'));
    expect(elements(text, 'extend')).toEqual(['<extend type="start"/>', '<extend type="stop"/>']);
  });

  it('leave out figures under which nothing is drawn, and say so', () => {
    const text = inC('basse | 4 _ = g2 a |', '  fig | 6 5 4 |');
    expect(elements(musicXml(text), 'figure-number')).toEqual([5, 4].map((n) => `<figure-number>${n}</figure-number>`));
    expect(codes(text)).toContain('musicxml-figures');
  });

  it('set figures over rests and accidentals by themselves', () => {
    const text = musicXml(inC('basse | 2 g2 r |', '  fig | _ # |'));
    expect(elements(text, 'figured-bass')).toEqual([
      '<figured-bass><figure><prefix>sharp</prefix></figure></figured-bass>',
    ]);
    expect(text.indexOf('<figured-bass>')).toBeGreaterThan(text.indexOf('</note>'));
    expect(text.indexOf('<figured-bass>')).toBeLessThan(text.indexOf('<rest/>'));
  });

  it('keep the time of figures within a note that runs through the barline', () => {
    const text = musicXml(inC("basse | 2 g2 1 a'through | 2 b |", '  fig | _ 5,4,3 | _ |'));
    expect(
      elements(text, 'figured-bass').map((one) => [
        one.includes('print-object="no"') ? 'hidden' : 'drawn',
        one.match(/<figure-number>(\d)/)?.[1],
        one.match(/<duration>(\d+)/)?.[1],
      ]),
    ).toEqual([
      ['drawn', '5', '4'],
      ['drawn', '4', '2'],
      ['hidden', '4', '2'],
      ['drawn', '3', '4'],
    ]);
  });

  it('set a quoted text as one syllable and no line where nothing holds', () => {
    const text = musicXml(inC('dessus | 4 g4 a b c5 |', '  text | "à Dieu" _ vi- ve |'));
    expect(elements(text, 'lyric')).toEqual([
      '<lyric number="1"><syllabic>single</syllabic><text>à Dieu</text></lyric>',
      '<lyric number="1"><syllabic>begin</syllabic><text>vi</text></lyric>',
      '<lyric number="1"><syllabic>end</syllabic><text>ve</text></lyric>',
    ]);
  });

  // "The lyric number indicates multiple lines" (MusicXML 4.0, `lyric`): words go on and hold on within their stanza.
  it('set each stanza by its number', () => {
    const text = musicXml(inC('dessus | 4 g4 a b c5 |', '  text | Lu- men = _ |', '  text | Sol _ or- tus |'));
    expect(elements(text, 'lyric')).toEqual([
      '<lyric number="1"><syllabic>begin</syllabic><text>Lu</text></lyric>',
      '<lyric number="2"><syllabic>single</syllabic><text>Sol</text></lyric>',
      '<lyric number="1"><syllabic>end</syllabic><text>men</text><extend type="start"/></lyric>',
      '<lyric number="1"><extend type="stop"/></lyric>',
      '<lyric number="2"><syllabic>begin</syllabic><text>or</text></lyric>',
      '<lyric number="2"><syllabic>end</syllabic><text>tus</text></lyric>',
    ]);
  });

  it('set syllables under their notes', () => {
    const text = musicXml(inC('dessus | 4 g4 a b c5 |', '  text | a word- ing = |'));
    expect(elements(text, 'lyric')).toEqual([
      '<lyric number="1"><syllabic>single</syllabic><text>a</text></lyric>',
      '<lyric number="1"><syllabic>begin</syllabic><text>word</text></lyric>',
      '<lyric number="1"><syllabic>end</syllabic><text>ing</text><extend type="start"/></lyric>',
      '<lyric number="1"><extend type="stop"/></lyric>',
    ]);
  });
});

describe('what MusicXML cannot say', () => {
  it.each([
    ["dessus | 1 c5'cb? |", 'musicxml-doubtful'],
    ['dessus | {overdot 4. c5 8 d} 2 e |', 'musicxml-hint'],
    ['dessus | {unclear 2 c5 d} |', 'musicxml-span'],
    ['dessus | {lig 2 c5 d} |', 'musicxml-ligature'],
    ['dessus | <K: 1 c5 ; L: 1 d5> |', 'musicxml-option'],
    ['dessus | 1 c5 (custos d5) |', 'musicxml-custos'],
    ["dessus | 2 c5'line d'. |", 'musicxml-line'],
    ["dessus | 1 c5'zz(from main) |", 'musicxml-parameter'],
    ["dessus | 2 c5 _'fermata |", 'musicxml-mark-gap'],
  ])('%s is told as %s', (lane, code) => {
    expect(codes(inC(lane))).toContain(code);
  });

  it('is told once a voice and names the bars', () => {
    expect(told(inC('dessus | {lig 2 c5 d} | 1 c5 | {lig 2 c5 d} |'))).toEqual([
      'The ligatures of dessus are written as single notes under a bracket (bars 1, 3).',
    ]);
  });
});

describe('the file', () => {
  const text = inC("dessus | 4 g4'zz 8 a b 2 c#5 |", 'basse | 2 g3 e |');

  it('is the same every time, packed or not', () => {
    const once = scoreOf(text);
    expect(exportMusicXml(once, SOURCE).text).toBe(musicXml(text));
    expect(exportMxl(once, SOURCE).bytes).toEqual(exportMxl(once, SOURCE).bytes);
  });

  it('holds the document in a packed archive', () => {
    const { bytes } = exportMxl(scoreOf(text), SOURCE);
    const files = unzipSync(bytes);
    expect(Object.keys(files)).toEqual(['mimetype', 'META-INF/container.xml', 'score.musicxml']);
    expect(new TextDecoder().decode(files['score.musicxml'])).toBe(musicXml(text));
  });

  it('names title, sources and reading', () => {
    const xml = musicXml(text);
    expect(xml).toContain('<work-title>Divisions in g</work-title>');
    expect(xml).toContain('<source>K: Thornmere Keyboard Book, f. 12r; L: Loose leaf kept with K</source>');
    expect(xml).toContain('<miscellaneous-field name="reading">written</miscellaneous-field>');
  });

  it('escapes what XML reserves', () => {
    expect(musicXml(text.replace('Divisions in g', 'g & <c>'))).toContain('<work-title>g &amp; &lt;c&gt;</work-title>');
  });
});

// Whole pieces, kept as they were when last looked at. UPDATE_GOLDEN=1 writes them anew.
describe('whole pieces', () => {
  const folder = join(import.meta.dirname, 'golden');
  const pieces = ['sarabande', 'toccata', 'prelude', 'air'];

  const exportedPiece = (name: string): string => {
    const source = readFileSync(join(folder, `${name}.bent`), 'utf8');
    return exportMusicXml(scoreOf(source), SOURCE).text;
  };

  it.each(pieces)('the %s is as it was', (name) => {
    const golden = join(folder, `${name}.musicxml`);
    const text = exportedPiece(name);
    if (process.env.UPDATE_GOLDEN !== undefined) writeFileSync(golden, text);
    expect(text).toBe(readFileSync(golden, 'utf8'));
  });

  it.each(pieces)('the %s satisfies an independent reader', (name) => {
    expect(validate(parse(exportedPiece(name))).errors).toEqual([]);
  });

  for (const name of pieces) {
    testWithSchema('musicxml-4.0/musicxml.xsd', `the ${name} is valid MusicXML`, async () => {
      expect(await validateMusicXml(exportedPiece(name))).toEqual([]);
    });
  }
});
