/** An export made for the editor. */
import { describe, expect, it } from 'vitest';
import { exporting } from '../../server/features/exporting';
import type { ExportForm } from '../../server/features/protocol';
import { noFiles } from '../../server/workspace/host';
import { projectOf } from '../../server/workspace/project';
import { engraver } from '../helpers/engraver';
import { HEAD } from '../helpers/music';

const exported = (music: string, format: string, reading = 'written', leaveGaps = false) => {
  const text = `${HEAD}system upper C1 lower F4 meter C\n${music}`;
  const project = projectOf(noFiles, 'vscode-vfs://library/folio%201/Air%20no.%202.bent', text);
  return exporting(project, { format, reading, leaveGaps }, engraver);
};
const AIR = '  dessus | 2 c5 <K: 2 d5 ; L: 2 e5> |||\n';
const SHORT = '  dessus | 1 c5 | 2 c5 4 d | 1 e |||\n';

describe('an export from the editor', () => {
  it('stands beside the score under its name, whatever the file system', async () => {
    expect((await exported(AIR, 'musicxml'))?.files.map(({ uri }) => uri)).toEqual([
      'vscode-vfs://library/folio%201/Air%20no.%202.musicxml',
    ]);
  });
  it('is a file for each reading where all are wished for', async () => {
    const files = (await exported(AIR, 'json', 'all'))?.files ?? [];
    expect(files.map(({ uri }) => uri.replace(/^.*\//, ''))).toEqual([
      'Air%20no.%202.json',
      'Air%20no.%202.K.json',
      'Air%20no.%202.L.json',
    ]);
  });
  it('is one teaching sheet of all readings', async () => {
    const files = (await exported(AIR, 'html', 'all'))?.files ?? [];
    expect(files.map(({ uri }) => uri.replace(/^.*\//, ''))).toEqual(['Air%20no.%202.html']);
  });
  it('carries bytes as base64: a compressed MusicXML is a zip archive, which begins with PK', async () => {
    const content = (await exported(AIR, 'mxl'))?.files[0]?.content ?? { text: '' };
    expect('base64' in content && Buffer.from(content.base64, 'base64').toString('latin1').slice(0, 2)).toBe('PK');
  });
  it('can be engraved', async () => {
    const content = (await exported(AIR, 'svg'))?.files[0]?.content ?? { base64: '' };
    expect('text' in content && content.text).toMatch(/<svg /);
  });
  it('has signs written out where that is wished for: the trill of 1689 begins above its note', async () => {
    const project = projectOf(
      noFiles,
      'file:///Air.bent',
      `${HEAD}reading R signs anglebert-1689\nsystem upper G2 meter C\n  dessus | 1 c5'zz |||\n`,
    );
    const params = { format: 'musicxml', reading: 'R', leaveGaps: false } as const;
    const steps = async (form: ExportForm) => {
      const content = (await exporting(project, { ...params, form }, engraver))?.files[0]?.content;
      return content && 'text' in content ? [...content.text.matchAll(/<step>(.)/g)].map(([, step]) => step) : [];
    };
    expect(await steps({ ornaments: 'sign' })).toEqual(['C']);
    expect((await steps({ ornaments: 'full' })).slice(0, 2)).toEqual(['D', 'C']);
  });
  it('is refused where a bar is too short, unless gaps may be left', async () => {
    const refused = await exported(SHORT, 'musicxml');
    expect(refused?.files).toEqual([]);
    expect(refused?.refusals[0]).toMatch(/^line \d+: /);
    expect((await exported(SHORT, 'musicxml', 'written', true))?.files).toHaveLength(1);
  });
});
