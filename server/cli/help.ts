/** `bentside help`: the pages of the catalogue of findings. */
import { catalogue, type FindingCode } from '../../grammar/findings/catalogue';
import { COULD_NOT, type Command, SOUND } from './command';
import { didYouMean } from './options';
import { shown } from './print';

const codes = Object.keys(catalogue).sort() as FindingCode[];

export const help: Command = {
  options: {},
  run(host, { operands }) {
    if (operands.length === 0) {
      host.out(codeList());
      return SOUND;
    }
    return Math.max(
      ...operands.map((word) => {
        const code = codes.find((one) => one === word.toLowerCase());
        if (code === undefined) host.say(`No finding has the code “${shown(word)}”.${didYouMean(word, codes)}\n`);
        else host.out(page(code));
        return code === undefined ? COULD_NOT : SOUND;
      }),
    );
  },
};

function codeList(): string {
  const width = Math.max(...codes.map((code) => code.length));
  return codes
    .map((code) => `${code.padEnd(width)}  ${catalogue[code].level.padEnd(7)}  ${catalogue[code].sentence}\n`)
    .join('');
}

const page = (code: FindingCode): string => {
  const { level, sentence, help: text } = catalogue[code];
  return `${code} (${level})\n\n${sentence}\n\n${text.trim()}\n`;
};
