/**
 * The critical report. An entry names bar, voice and symbol (notes and rests counted), siglum and reading; pitches after
 * Helmholtz, values abbreviated; an upbeat is bar 0; transferred signs are named (the facts of editing, from memory).
 */
import { describe, expect, it } from 'vitest';
import { reportMarkdown, reportPage } from '../../server/pages/report';
import { reportOf } from '../../server/readings/report';
import type { Report, ReportTable } from '../../server/readings/report/document';
import { lane, scoreOf } from '../helpers/music';
import { sampleAnalysis, sampleNames } from '../helpers/samples';

const reported = (music: string, before = ''): Report => {
  const analysis = lane(music, 'C', before);
  return reportOf(scoreOf(analysis), (name) => analysis.score(name));
};
const sample = (name: string): Report => {
  const analysis = sampleAnalysis(name);
  return reportOf(scoreOf(analysis), (choice) => analysis.score(choice));
};

const tablesOf = ({ sections }: Report): readonly ReportTable[] => sections.flatMap(({ tables }) => tables);
const rows = (report: Report, caption: string): string[] =>
  (tablesOf(report).find((table) => table.caption === caption)?.rows ?? []).map((row) => row.join(' · '));
const ENTRIES = 'One entry a place';

describe('an entry', () => {
  it.each([
    ['<K: 2 c5 d ; L: 2 c5 f#>', '1, dessus, 2 · m d′′ (K) · L: m f♯′′ · pitch'],
    ['<K: 4. c5 8 d ; L: 4 c5 d> 2 r', '1, dessus, 1 · c. c′′, q d′′ (K) · L: c c′′, c d′′ · rhythm'],
    ["<K: 1 c5'zz ; L: 1 c5>", "1, dessus, 1 · sb c′′ 'zz (K) · L: sb c′′ · signs and other marks"],
    ['4 g4 | 2 r <K: 2 c5-e ; L: 2 r>', '1, dessus, 2 · m c′′–e′′ (K) · L: m rest · pitch'],
    ['<K: 1 c5 ; L: 1 d5>*"paler ink"', '1, dessus, 1 · sb c′′ (K) · L: sb d′′ · pitch. paler ink'],
  ])('of %s', (music, entry) => {
    expect(rows(reported(music), ENTRIES)).toEqual([entry]);
  });

  it('of an emendation gives what the source has, and the editor’s', () => {
    expect(rows(reported('<sic: 1 c5 ; corr: 1 d5>'), ENTRIES)).toEqual([
      '1, dessus, 1 · sb c′′ (K, L) · editor: sb d′′ · pitch',
    ]);
  });

  it('of an upbeat is of bar 0', () => {
    expect(rows(reported('4 <K: c5 ; L: 4 d5> | 1 e'), ENTRIES)[0]).toMatch(/^0, dessus, 1 · /);
  });

  it('counts rests and small notes, but no gaps', () => {
    expect(rows(reported('4 _ r {small 8 e5} 4 d <K: 4 c5 ; L: 4 e5>'), ENTRIES)[0]).toMatch(/^1, dessus, 4 · /);
  });
});

describe('sources', () => {
  it('that agree are said to', () => {
    expect(reported('1 c5').sections.find(({ heading }) => heading === 'Variants and emendations')?.said).toEqual([
      'K, L: no differences.',
    ]);
  });

  it('are counted by who agrees against whom', () => {
    const three = reported('<K,M: 1 c5 ; L: 1 d5> | <L: 1 c5 ; K,M: 1 d5>', 'source M "third"\n');
    expect(rows(three, 'Who agrees against whom')).toEqual(['K, M against L · 2']);
  });
});

describe('what the editor brings', () => {
  it('from elsewhere stands in one table, with its reason', () => {
    expect(
      rows(reported(`1 c5'[zz]*"from the subject" | d'ca:K`), 'Signs that are the editor’s, or in some texts only'),
    ).toEqual([
      "1, dessus, 1 · sb c′′ · 'zz · the editor’s · from the subject",
      "2, dessus, 1 · sb d′′ · 'ca · in K only · ",
    ]);
  });

  it('for one reading alone stands there too', () => {
    expect(
      rows(reported("1 c5'[zz]:house", 'reading house\n'), 'Signs that are the editor’s, or in some texts only'),
    ).toEqual(["1, dessus, 1 · sb c′′ · 'zz · the editor’s, in house only · "]);
  });

  it('besides signs are accidentals, ties, curves, barlines', () => {
    expect(
      rows(reported("2 f[#]5 c[=] | 2 c'[u] d'.[] |[] 1 e".replace("'.[]", "'[.]")), 'Other additions of the editor'),
    ).toEqual([
      '1, dessus, 1 · m f′′ · sharp',
      '1, dessus, 2 · m c′′ · tie',
      '2, dessus, 1 · m c′′ · curve',
      '2, barline · | · barline',
    ]);
  });

  it('and what the source leaves unclear are told by place', () => {
    const report = reported('2 f[#]5 {unclear 2 d} | {supplied 1 c} | lost 1');
    expect(rows(report, 'Other additions of the editor')).toEqual(['1, dessus, 1 · m f′′ · sharp']);
    expect(rows(report, 'The state of the sources')).toEqual([
      '1, dessus, 2 · from m d′′ · hard to read',
      '2, dessus, 1 · from sb c′′ · supplied by the editor',
      '3, dessus, 1 ·  · lost',
    ]);
  });
});

describe('what is doubtful', () => {
  it('stands together: notes, values, ties, signs, curves, and whose a reading is', () => {
    const report = reported("4 c5? 4? d 2 e=? | 2 e'zz? d | 2 c'u? d'.? | <K: 1 c5 ; L?: 1 d5>*\"perhaps M\"");
    expect(rows(report, 'Doubtful')).toEqual([
      '1, dessus, 1 · c c′′ · note · ',
      '1, dessus, 2 · c d′′ · value · ',
      '1, dessus, 3 · m e′′ · tie · ',
      "2, dessus, 1 · m e′′ · 'zz · ",
      '3, dessus, 1 · m c′′ · curve · ',
      '4, dessus, 1 · sb d′′ · whether L has it so · perhaps M',
    ]);
  });

  it('is marked at the siglum of an entry', () => {
    expect(rows(reported('<K: 1 c5 ; L?: 1 d5>'), ENTRIES)).toEqual(['1, dessus, 1 · sb c′′ (K) · L?: sb d′′ · pitch']);
  });
});

describe('a reading', () => {
  it('is told with what it states itself, not with what the file says for all', () => {
    const before =
      'practice overdot\nreading one "first"\n  practice snap\nreading two "second" from one\n  practice hemiola\n';
    expect(rows(reported('1 c5', before), 'Readings offered, and what each chooses')).toEqual([
      'one · first · sharpened snaps',
      'two · second · built on one; hemiolas',
    ]);
  });
});

describe('annotations', () => {
  const NOTES =
    'editor MK "an editor"\nnote n1 kind pitch by MK certainty high evidence "the bass" : "sure"\nnote n2 certainty low : "a guess"\n';
  it('say by whom, how sure and on what evidence; the doubtful stand by themselves', () => {
    const report = reported('2 c5*n1 d*n2 | 1 e*"blot"', NOTES);
    expect(rows(report, 'Annotations')).toEqual([
      '1, dessus, 1 · pitch · sure · an editor · high · the bass',
      '2, dessus, 1 ·  · blot ·  ·  · ',
    ]);
    expect(rows(report, 'Doubtful: of low or unknown certainty')).toEqual(['1, dessus, 2 ·  · a guess ·  · low · ']);
  });

  it('of a passage are told once, of another text where they stand', () => {
    expect(rows(reported('{unclear 2 c5 d}*"stain" | <K: 1 c5 ; L: 1 d5*"in L alone">'), 'Annotations')).toEqual([
      '1, dessus, 1 ·  · stain ·  ·  · ',
      '2, dessus, 1 ·  · in L alone ·  ·  · ',
    ]);
  });
});

describe('the order', () => {
  it('is that of bars, whichever text something stands in, barlines among the notes', () => {
    expect(
      rows(reported('1 c5 |*"the line" <K: 1 c5 ; L: 1 d5*"in L alone"> | 1 e5*"last"'), 'Annotations').map((row) =>
        row.replace(/ · .*/, ''),
      ),
    ).toEqual(['1, barline', '2, dessus, 1', '3, dessus, 1']);
  });
});

describe('the key', () => {
  const keyOf = (music: string): string =>
    reported(music)
      .sections.flatMap((one) => one.said)
      .filter((said) => /^(?:Values|Pitches|The notes of a chord|Signs and other marks)/.test(said))
      .join(' ');

  it('has what is printed and nothing else, from the longest value on', () => {
    expect(keyOf('<K: 1 c5 ; L: 2 c5 4 d r>')).toBe(
      'Values: sb semibreve; m minim; c crotchet. Pitches are given after Helmholtz (c′ is middle C), with accidentals as they are drawn.',
    );
    expect(keyOf('1 c5')).toBe('');
  });
  it('explains dots, tuplets, chords, ties and the shapes of signs', () => {
    const key = keyOf("<K: 4. c5-e'ca 8 d = 4 c ; L: {3in2 4 c5 d e} 4 d'[zz] c>");
    expect(key).toContain('a full stop after a value is a dot; 3:2 a tuplet, 3 in the time of 2');
    expect(key).toContain('The notes of a chord stand from the lowest up');
    expect(key).toContain('= tied to what follows; [ ] the editor’s');
    expect(key).toContain("'ca a comma or closing half-circle to the right of the note; 'zz a short zigzag");
  });
});

describe('the rules', () => {
  it('in force and what is assumed are stated', () => {
    const said = reported('1 c5', 'accidentals bar\npractice overdot in A\nbeaming 8 by 6\n').sections.flatMap(
      (one) => one.said,
    );
    expect(said.join('\n')).toMatch(/holds to the barline/);
    expect(said.join('\n')).toMatch(/dots stretched as by a second dot, the dot held, in A/);
    expect(said.join('\n')).toMatch(/in groups \(quavers by 6\)/);
    expect(said.join('\n')).toMatch(/therefore assumed: the pitch/);
  });
  it('name temperaments, tempi and the reach of accidentals in words, and as typed a temperament that nobody knows', () => {
    const before = `tuning meantone 1/4 wolf c#-ab
reading grave "Slow, with a G sharp"
  tempo B at 46
  accidentals bar
  tuning meantone 1/4 wolf g#-eb
reading lost "By a temperament that is not told"
  tuning nowhere
`;
    const report = reported('1 c5', before);
    expect(report.sections.flatMap((one) => one.said)).toContain(
      'Pitch and tuning: 1/4-comma meantone, its notes from a flat to c sharp.',
    );
    expect(rows(report, 'Readings offered, and what each chooses')).toEqual([
      'grave · Slow, with a G sharp · a written accidental holds to the barline, in its octave, for all voices of its stave; tempo: 46 breves a minute; tuning: 1/4-comma meantone, its notes from e flat to g sharp',
      'lost · By a temperament that is not told · tuning: nowhere',
    ]);
  });
});

describe.each(sampleNames)('of %s', (name) => {
  const report = sample(name);

  it('the page is one file, each of its tables with a caption and heads, as long as the report', () => {
    const html = reportPage(report);
    const count = (pattern: RegExp): number => html.match(pattern)?.length ?? 0;
    expect(html).not.toMatch(/<(?:script|link|img)|https?:/);
    expect(count(/<caption>/g)).toBe(count(/<table/g));
    expect(count(/<th scope="row">/g)).toBe(tablesOf(report).reduce((sum, table) => sum + table.rows.length, 0));
  });

  it('Markdown has all of its rows, and no row more cells than its head', () => {
    const lines = reportMarkdown(report)
      .split('\n')
      .filter((line) => line.startsWith('|'));
    expect(lines.length).toBe(tablesOf(report).reduce((sum, table) => sum + table.rows.length + 2, 0));
    for (const table of tablesOf(report)) for (const row of table.rows) expect(row).toHaveLength(table.head.length);
  });
});
