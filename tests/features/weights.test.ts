/** An editor's weights in music without measure, set from the score panel. */
import { expect, it } from 'vitest';
import { playingOf } from '../../server/features/playing';
import { weightEdit, weightsOn } from '../../server/features/weights';
import { noFiles } from '../../server/workspace/host';
import { type Project, projectOf } from '../../server/workspace/project';
import { withEdits } from '../helpers/editor';
import { HEAD } from '../helpers/music';

const prelude = (music: string): string => `${HEAD}page "2v"\nsystem free upper G2 lower F4\n  dessus | ${music} |||\n`;
const project = (music: string): Project => projectOf(noFiles, 'prelude.bent', prelude(music));

/** The passage when a note was given a weight. */
function weighed(music: string, note: string, weight: number): string {
  const edit = weightEdit(project(music), `e-2v-1-dessus-${note}`, 'written', weight);
  return edit === undefined
    ? 'nothing'
    : withEdits(prelude(music), [edit]).replace(/^[\s\S]*dessus \| (.*) \|{3}\n$/, '$1');
}

it('a weight is written before the other marks of its note', () => {
  expect(weighed("1 c5 e'u g", '1.1', 3)).toBe("1 c5'w3 e'u g");
  expect(weighed("1 c5 e'u g", '1.2', 2)).toBe("1 c5 e'w2'u g");
  expect(weighed('1 c5-e-g b', '1.1', 2)).toBe("1 c5-e-g'w2 b");
});

it('one that is there is changed, and taken away where it is the usual', () => {
  expect(weighed("1 c5'u'w2 e'.", '1.1', 4)).toBe("1 c5'u'w4 e'.");
  expect(weighed("1 c5'u'w2 e'.", '1.1', 1)).toBe("1 c5'u e'.");
  expect(weighed('1 c5 e', '1.1', 1)).toBe('1 c5 e');
});

it('stays within what can be typed', () => {
  expect(weighed('1 c5 e', '1.1', 40)).toBe("1 c5'w9 e");
  expect(weighed('1 c5 e', '1.1', -3)).toBe('1 c5 e');
});

it('belongs to notes of systems without measure alone', () => {
  const measured = projectOf(
    noFiles,
    'air.bent',
    prelude('1 c5').replace('system free', 'system').replace('F4', 'F4 meter C'),
  );
  expect(weightEdit(measured, 'e-2v-1-dessus-1.1', 'written', 2)).toBeUndefined();
  expect(weightEdit(project('1 c5'), 'e-2v-1-dessus-7.1', 'written', 2)).toBeUndefined();
  const [system] = measured.analysis.score('written')?.pieces[0]?.systems ?? [];
  expect(system && weightsOn([system])).toEqual([]);
});

it('is told of every note, and makes it last so many times as long', () => {
  const music = "1 c5'w3 e g";
  const [system] = project(music).analysis.score('written')?.pieces[0]?.systems ?? [];
  expect(system && weightsOn([system]).map(({ weight }) => weight)).toEqual([3, 1, 1]);
  const second = (of: string): number => {
    const played = playingOf(project(of), { reading: 'written', tuning: null, pace: 1, begin: { page: 0 } });
    return played?.notes[1]?.at ?? 0;
  };
  expect(second(music)).toBeCloseTo(3 * second('1 c5 e g'), 3);
});
