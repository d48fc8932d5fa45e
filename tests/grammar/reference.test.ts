import { describe, expect, it } from 'vitest';
import { catalogue } from '../../grammar/findings/catalogue';
import { sentence } from '../../grammar/findings/word';
import { lists, withLists } from '../../grammar/generate/reference';
import { parseFile } from '../../grammar/parse';
import { analyse } from '../../server/document/analysis';
import { atLeast } from '../../server/document/levels';
import { exportTimeline } from '../../server/export/timeline';
import { perform } from '../../server/readings/perform';
import { type Example, examplesOf, referenceText } from '../helpers/reference';

const reference = referenceText();
const examples = examplesOf(reference);

/** Codes and sentences of what the cut and the parser say. */
const problemsOf = ({ file }: Example): { code: string; says: string }[] =>
  parseFile(file)
    .blocks.flatMap((block) => [
      ...block.problems,
      ...[...block.statements, ...block.lanes].flatMap(({ tree }) => tree.problems),
    ])
    .map(({ code, slots }) => ({ code, says: `${code}: ${sentence(code, slots)}` }));

/** Errors and warnings of the whole analysis in all readings. */
const graveFindings = ({ file }: Example): { code: string; says: string }[] =>
  analyse('example.bent', parseFile(file))
    .findings()
    .filter(({ level }) => atLeast(level, 'warning'))
    .map(({ code, message, range }) => ({
      code,
      says: `${code}: ${message} (${file.split('\n')[range.start.line - 1]?.trim()})`,
    }));

/** The timeline of a text as written. */
function timelineOf(file: string, text: string): ReturnType<typeof exportTimeline> {
  const score = analyse(file, parseFile(text)).score('written');
  if (score === undefined) throw new Error('every text has the reading “written”');
  return exportTimeline(perform(score), { leaveGaps: false });
}

const sound = examples.filter(({ wrong }) => wrong === undefined);
const faulty = examples.filter(({ wrong }) => wrong !== undefined);

describe('the reference', () => {
  it('has its generated lists as the vocabulary is now (else: npm run generate)', () => {
    expect(withLists(reference)).toBe(reference);
  });

  it('would notice a list that is stale', () => {
    for (const name of Object.keys(lists)) {
      const begin = `<!-- ${name}:begin -->`;
      const stale = reference.replace(begin, `${begin}\nan old line`);
      expect(stale).not.toBe(reference);
      expect(withLists(stale)).toBe(reference);
    }
  });

  it('leads to a heading with every link', () => {
    const anchors = [...reference.matchAll(/^#+ (.*)$/gm)].map(([, heading = '']) =>
      heading
        .toLowerCase()
        .replace(/[^\p{L}\p{N} _-]/gu, '')
        .replaceAll(' ', '-'),
    );
    const links = [...reference.matchAll(/\]\(#([^)]*)\)/g)].map(([, anchor]) => anchor);
    expect(links.length).toBeGreaterThan(30);
    expect(links.filter((anchor) => !anchors.includes(anchor ?? ''))).toEqual([]);
  });
});

describe('an example of the reference', () => {
  it.each(sound.map((example) => [example.line, example] as const))(
    'in line %i reads without a problem',
    (_, example) => {
      expect(problemsOf(example).map(({ says }) => says)).toEqual([]);
    },
  );

  it.each(sound.map((example) => [example.line, example] as const))(
    'in line %i has neither errors nor warnings',
    (_, example) => {
      expect(graveFindings(example).map(({ says }) => says)).toEqual([]);
    },
  );

  it.each(faulty.map((example) => [example.line, example.wrong, example] as const))(
    'in line %i shows the mistake %s and no other',
    (_, code, example) => {
      expect(Object.keys(catalogue)).toContain(code);
      expect(graveFindings(example).map((finding) => finding.code)).toEqual([code]);
    },
  );

  it('of a timeline gives what is printed under it', () => {
    const [example, ...others] = examples.filter(({ kind }) => kind === 'timeline');
    expect(others).toEqual([]);
    const made = timelineOf('close.bent', example?.file ?? '');
    expect(made.problems).toEqual([]);
    expect(made.text.trimEnd()).toBe(example?.gives);
  });
});

describe('what an example says that it sounds', () => {
  const claims = sound.flatMap(({ line, file }) => {
    const said = /\/\/ sounds (.*)$/m.exec(file)?.[1];
    return said === undefined ? [] : [[line, said, file] as const];
  });

  it('is said of each practice of accidentals', () => {
    expect(claims.length).toBeGreaterThanOrEqual(4);
  });

  it.each(claims)('in line %i is what is computed: %s', (_, said, file) => {
    const heard = timelineOf('example.bent', file).timeline?.pieces.flatMap(({ events }) =>
      events.map(({ pitch }) => pitch),
    );
    expect(heard?.map((pitch) => pitch?.replace(/\d$/, '')).join(' ')).toBe(said);
  });
});
