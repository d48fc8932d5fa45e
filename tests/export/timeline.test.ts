import { describe, expect, it } from 'vitest';
import { findingOf, type Score, score, type Timeline, timeline } from '../../server/library';

const HEAD = `bentside 1

title "Gavotte for the upper manual"
source K "Thornmere Keyboard Book, f. 3v"
source L "A loose leaf kept with K"
reading plain "As the loose leaf has it"
  takes L
stave upper lines 5
voice dessus upper
`;

/** One voice under a G clef, with one flat drawn and the sign of common time. */
const inBFlat = (lane: string, more = ''): string => `${HEAD}
page "3v"
system  upper G2  key bb  meter C
  dessus | ${lane}
${more}`;

const timelineOf = (text: string, reading = 'written', options = {}): Timeline => {
  const made = timeline(score(text, { file: 'gavotte.bent', reading }), { leaveGaps: false, ...options });
  if (made.timeline === undefined) throw new Error(made.problems.map(({ problem }) => problem.code).join());
  return made.timeline;
};

const eventsOf = (text: string, reading?: string) => timelineOf(text, reading).pieces.flatMap(({ events }) => events);

/** "onset+duration pitch" of each event. */
const heard = (text: string, reading?: string): string[] =>
  eventsOf(text, reading).map(({ onset, duration, pitch, kind }) => `${onset}+${duration} ${pitch ?? kind}`);

describe('the timeline', () => {
  it('says which file, title and reading it shows, and lists the bars with their systems', () => {
    const text = inBFlat('1 c5 |', 'system\n  dessus | 1 d5 | 1 e |\n');
    expect(timelineOf(text)).toMatchObject({
      schema: 'bentside.timeline/1',
      file: 'gavotte.bent',
      title: 'Gavotte for the upper manual',
      reading: 'written',
      pieces: [
        {
          name: '',
          bars: [
            { number: '1', system: '3v/1', onset: '0', duration: '1' },
            { number: '2', system: '3v/2', onset: '1', duration: '1' },
            { number: '3', system: '3v/2', onset: '2', duration: '1' },
          ],
        },
      ],
    });
  });

  it('gives a note what is drawn and what sounds: a signature of one flat flattens b', () => {
    const text = inBFlat("4 b4'zz bn f# eb5 |");
    expect(eventsOf(text)).toEqual([
      {
        address: '3v/1/dessus/1.1',
        voice: 'dessus',
        stave: 'upper',
        kind: 'note',
        onset: '0',
        duration: '1/4',
        written: 'b4',
        pitch: 'bb4',
        midi: 70,
        marks: [{ sign: 'zz', onset: '0', address: '3v/1/dessus/1.1' }],
        line: 13,
        column: 14,
      },
      expect.objectContaining({ written: 'bn4', pitch: 'b4', midi: 71, onset: '1/4', column: 20 }),
      expect.objectContaining({ written: 'f#4', pitch: 'f#4', midi: 66 }),
      expect.objectContaining({ written: 'eb5', pitch: 'eb5', midi: 75 }),
    ]);
  });

  it("leaves the editor's accidental out of what is drawn, but not a cautionary one", () => {
    expect(eventsOf(inBFlat('2 f[#]4 f(#) |')).map(({ written, pitch }) => [written, pitch])).toEqual([
      ['f4', 'f#4'],
      ['f#4', 'f#4'],
    ]);
  });

  it('makes one event of tied notes, over barlines and system ends, with all their marks', () => {
    const text = inBFlat("2 c5 d= | 2 d=  4 ='zz e |", 'system\n  dessus | 1 f5= |\nsystem\n  dessus | 1 f5 |\n');
    expect(heard(text)).toEqual(['0+1/2 c5', '1/2+5/4 d5', '7/4+1/4 e5', '2+2 f5']);
    expect(eventsOf(text)[1]).toMatchObject({
      address: '3v/1/dessus/1.2',
      marks: [{ sign: 'zz', onset: '3/2', address: '3v/1/dessus/2.2' }],
    });
  });

  it('gives each note of a chord its own event, and lengthens only those that are tied', () => {
    expect(heard(inBFlat('2 c4-e=-g c-e-a |'))).toEqual(['0+1/2 c4', '0+1 e4', '0+1/2 g4', '1/2+1/2 c4', '1/2+1/2 a4']);
  });

  it('strikes again a note that is not tied', () => {
    expect(heard(inBFlat('2 c5 c |'))).toEqual(['0+1/2 c5', '1/2+1/2 c5']);
  });

  it('lets a note run on through the barline under the events that follow', () => {
    expect(heard(inBFlat("2 c5 2. d'through | 2. e |"))).toEqual(['0+1/2 c5', '1/2+3/4 d5', '5/4+3/4 e5']);
  });

  it('keeps rests, gaps and lacunae as events without a pitch', () => {
    const text = inBFlat('4 r _ lost 2 | rbar | __ |');
    expect(heard(text)).toEqual(['0+1/4 rest', '1/4+1/4 gap', '1/2+1/2 lost', '1+1 rest', '2+1 gap']);
    expect(eventsOf(text)[0]).toMatchObject({ written: null, pitch: null, midi: null, marks: [] });
  });

  it('counts triplets exactly: three quavers in the time of two last a twelfth each', () => {
    expect(heard(inBFlat('{3in2 8 c5 d e} 2. f |'))).toEqual([
      '0+1/12 c5',
      '1/12+1/12 d5',
      '1/6+1/12 e5',
      '1/4+3/4 f5',
    ]);
  });

  it('lets time stand still at small notes, which stand before what they belong to', () => {
    expect(heard(inBFlat('2 c5 {small 16 d e} 2 f |'))).toEqual(['0+1/2 c5', '1/2+0 d5', '1/2+0 e5', '1/2+1/2 f5']);
  });

  it('shows the reading asked for', () => {
    const text = inBFlat('2 c5 <K: 2 d ; L: 4 e f> |');
    expect(heard(text)).toEqual(['0+1/2 c5', '1/2+1/2 d5']);
    for (const reading of ['L', 'plain']) {
      expect(heard(text, reading)).toEqual(['0+1/2 c5', '1/2+1/4 e5', '3/4+1/4 f5']);
      expect(timelineOf(text, reading).reading).toBe(reading);
    }
  });

  it('counts columns in UTF-16 units, whatever stands in the line', () => {
    const [words, note] = [inBFlat('"á 𝄞" 1 c5 |'), '"á 𝄞" 1 '.length];
    expect(eventsOf(words)[0]).toMatchObject({ line: 13, column: 12 + note });
  });

  it('can be had of some bars, with times still from the start of the piece', () => {
    const text = inBFlat('1 c5 | 1 d | 1 e | 1 f |');
    const [piece] = timelineOf(text, 'written', { bars: { from: '2', to: '3' } }).pieces;
    expect(piece?.bars.map(({ number }) => number)).toEqual(['2', '3']);
    expect(piece?.events.map(({ onset, pitch }) => [onset, pitch])).toEqual([
      ['1', 'd5'],
      ['2', 'e5'],
    ]);
  });

  it('gives of some bars also what was struck before and still sounds in them', () => {
    const tied = inBFlat('1 c5= | c= | c | 1 d |');
    const [piece] = timelineOf(tied, 'written', { bars: { from: '2', to: '4' } }).pieces;
    expect(piece?.events.map(({ onset, duration, pitch }) => `${onset}+${duration} ${pitch}`)).toEqual([
      '0+3 c5',
      '3+1 d5',
    ]);
    const through = inBFlat("2. c5 2 d'through | 2. e | 1 f |");
    const [last] = timelineOf(through, 'written', { bars: { from: '2', to: '2' } }).pieces;
    expect(last?.events.map(({ pitch }) => pitch)).toEqual(['d5', 'e5']);
    const ended = timelineOf(tied, 'written', { bars: { from: '4', to: '4' } }).pieces[0]?.events;
    expect(ended?.map(({ pitch }) => pitch)).toEqual(['d5']);
  });

  it('gives bars of every piece that has them, and names the pieces that have not', () => {
    const piece = (name: string, bars: string): string =>
      `piece "${name}"\nsystem upper G2 meter C\n  dessus | ${bars} |||\n`;
    const suite = score(
      `${HEAD}${piece('Allemande', '1 c5 | d | e')}${piece('Gigue', '1 g5 | a')}${piece('Air', '1 f5')}`,
    );
    const made = timeline(suite, { leaveGaps: false, bars: { from: '2', to: '2' } });
    expect(made.timeline?.pieces.map(({ name, events }) => [name, ...events.map(({ pitch }) => pitch)])).toEqual([
      ['Allemande', 'd5'],
      ['Gigue', 'a5'],
    ]);
    expect(made.problems.map(({ problem }) => [problem.code, problem.slots.name])).toEqual([
      ['export-piece-without-bars', '“Air”'],
    ]);
  });

  it('calls no two notes alike where a page is taken up again after another', () => {
    const line = (bar: string): string => `system\n  dessus | ${bar} |\n`;
    const text = `${HEAD}page "3v"\nsystem upper G2 meter C\n  dessus | 1 c5 |\npage "4r"\n${line('1 d5')}page "3v"\n${line('1 e5')}`;
    expect(eventsOf(text).map(({ address }) => address)).toEqual([
      '3v/1/dessus/1.1',
      '4r/1/dessus/1.1',
      '3v/2/dessus/1.1',
    ]);
  });

  const codesOf = (of: Score, options: Parameters<typeof timeline>[1]): string[] =>
    timeline(of, options).problems.map(({ problem }) => problem.code);

  it('is refused where a bar is wrong, unless gaps may be left', () => {
    const text = inBFlat('1 c5 | 2. d | 1 e |');
    const wrong = score(text);
    expect(timeline(wrong)).toMatchObject({ timeline: undefined, text: '' });
    expect(codesOf(wrong, { leaveGaps: false })).toEqual(['export-broken-bar']);
    expect(codesOf(wrong, { leaveGaps: true })).toEqual(['export-gap-left']);
    const [told] = timeline(wrong).problems;
    expect(told && findingOf(wrong, told).range.start.offset).toBe(text.indexOf('d | 1 e'));
    const pitches = timeline(wrong, { leaveGaps: true }).timeline?.pieces[0]?.events.map(({ pitch }) => pitch);
    expect(pitches).toEqual(['c5', 'e5']);
  });

  it('keeps of tied notes those that stand in sound bars', () => {
    const tied = score(inBFlat('2 c5 e= | 2. e= | 1 e | f |'));
    const events = timeline(tied, { leaveGaps: true }).timeline?.pieces[0]?.events;
    expect(events?.map(({ onset, duration, pitch, address }) => `${onset}+${duration} ${pitch} ${address}`)).toEqual([
      '0+1/2 c5 3v/1/dessus/1.1',
      '1/2+1/2 e5 3v/1/dessus/1.2',
      '7/4+1 e5 3v/1/dessus/3.1',
      '11/4+1 f5 3v/1/dessus/4.1',
    ]);
  });

  it('is refused where there are no such bars', () => {
    const short = score(inBFlat('1 c5 |'));
    expect(codesOf(short, { leaveGaps: false, bars: { from: '8', to: '9' } })).toEqual(['export-no-such-bar']);
  });

  it('is JSON with an event a line, keys in a fixed order, and the same bytes each time', () => {
    const text = inBFlat("2 c5'zz r | 1 d |");
    const made = timeline(score(text)).text;
    expect(made).toBe(timeline(score(text)).text);
    expect(JSON.parse(made)).toEqual(timeline(score(text)).timeline);
    expect(made.split('\n')).toEqual([
      '{',
      '  "schema": "bentside.timeline/1",',
      '  "file": "score.bent",',
      '  "title": "Gavotte for the upper manual",',
      '  "reading": "written",',
      '  "pieces": [',
      '    {',
      '      "name": "",',
      '      "bars": [',
      '        { "number": "1", "system": "3v/1", "onset": "0", "duration": "1" },',
      '        { "number": "2", "system": "3v/1", "onset": "1", "duration": "1" }',
      '      ],',
      '      "events": [',
      '        { "address": "3v/1/dessus/1.1", "voice": "dessus", "stave": "upper", "kind": "note", "onset": "0", "duration": "1/2", "written": "c5", "pitch": "c5", "midi": 72, "marks": [{ "sign": "zz", "onset": "0", "address": "3v/1/dessus/1.1" }], "line": 13, "column": 14 },',
      '        { "address": "3v/1/dessus/1.2", "voice": "dessus", "stave": "upper", "kind": "rest", "onset": "1/2", "duration": "1/2", "written": null, "pitch": null, "midi": null, "marks": [], "line": 13, "column": 20 },',
      '        { "address": "3v/1/dessus/2.1", "voice": "dessus", "stave": "upper", "kind": "note", "onset": "1", "duration": "1", "written": "d5", "pitch": "d5", "midi": 74, "marks": [], "line": 13, "column": 26 }',
      '      ]',
      '    }',
      '  ]',
      '}',
      '',
    ]);
  });
});

describe('annotations in the timeline', () => {
  const NOTE = 'editor MK "an editor"\nnote n1 kind pitch by MK certainty high evidence "the bass" : "sure"\n';

  it('stand at their note, or at the first of the passage of which they speak, with editor, certainty and evidence', () => {
    const events = eventsOf(inBFlat('2 c5*n1 {unclear 4 d e}*"stain" |').replace('stave upper', `${NOTE}stave upper`));
    expect(events.map(({ annotations }) => annotations)).toEqual([
      [{ text: 'sure', kind: 'pitch', by: 'MK', certainty: 'high', evidence: 'the bass' }],
      [{ text: 'stain', kind: '', by: '', certainty: '', evidence: '' }],
      undefined,
    ]);
  });
});
