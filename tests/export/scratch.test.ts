import { readFileSync, writeFileSync } from 'node:fs';
import { parse, validate } from 'musicxml-io';
import { expect, it } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import { sentence } from '../../grammar/findings/word';
import { time } from '../../grammar/time';
import { exportMusicXml, exportMxl } from '../../server/export/musicxml';
import { handScore } from '../helpers/handScore';

const S = '/work/shared/schemas/musicxml-4.0/';
const f = (n: string) => ({ fileName: n, contents: readFileSync(S + n, 'utf8') });
it('smoke', async () => {
  const score = handScore({
    title: 'Entrée & <co>',
    staves: [
      { name: 'upper', lines: 6, clef: { letter: 'C', line: 1 } },
      { name: 'lower', clef: { letter: 'F', line: 4 } },
    ],
    voices: [
      { name: 'dessus', stave: 0, stems: 'up' },
      { name: 'taille', stave: 0, stems: 'down' },
      { name: 'basse', stave: 1 },
    ],
    key: [{ letter: 'b', accidental: 'b', octave: undefined }],
    meter: { sign: 'cut-C', length: time(1), beats: 2, beatValue: 2 },
    lanes: [
      "4. b4'zz'3 8 c5'u 4. d 8 eb'. | 2 d5'zs'#= 4 d {3in2 8 c b4 a } | 1 b4-d5'arp |||",
      "2 d4 f#'[zz] | {small 8 g } 2 f[#]4'4-5 _ | 1 d4-f(#)-a'fermata |||",
      '2 b2 a= | 2. a 2 f3 | 2 b1 |||',
    ],
  });
  const { text, problems } = exportMusicXml(score, { clefs: 'source', leaveGaps: false });
  writeFileSync('/tmp/out.musicxml', text);
  console.log(problems.map((p) => sentence(p.problem.code, p.problem.slots)));
  const r = await validateXML({
    xml: [{ fileName: 'a.xml', contents: text }],
    schema: [f('musicxml.xsd')],
    preload: [f('xlink.xsd'), f('xml.xsd')],
  });
  console.log(r.errors.map((e) => e.rawMessage));
  console.log(validate(parse(text)).errors);
  expect(exportMxl(score, { clefs: 'modern', leaveGaps: false }).bytes.length).toBeGreaterThan(10);
});
