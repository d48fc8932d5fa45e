import { entries } from './entry';

export const hostFindings = entries({
  'include-missing': {
    level: 'error',
    sentence: 'The file “{path}” is not there to be included.',
    help: `An \`include\` names a file with tables, people and sources that several scores share. The path counts from the folder
of the file that includes it.

    include "house.bent"
    include "shared/people.bent"

Look for a slip in the name, or for a file that was moved. Until it is found, names that it may
declare (sources, tables, people, temperaments) are not told of one by one.`,
  },
  'include-circle': {
    level: 'error',
    sentence: 'The file “{path}” is being included already: {way}.',
    help: `A file cannot include itself, neither directly nor by way of another:

    // in a.bent
    include "b.bent"
    // in b.bent
    include "a.bent"

The second \`include\` is left out. Put what both need into a third file and include that in both.`,
  },
  'include-refused': {
    level: 'error',
    sentence:
      'The file “{path}” is not included: only files below the folder of this file, or of the work in hand, can be.',
    help: `An include stays within the folder of the file that includes it, or within the folder where the work is done. Absolute
paths, paths that climb out with \`..\`, and links that lead elsewhere are refused, so that a score received from somebody
else cannot read other files of the computer.

    include "shared/people.bent"     // below this folder

Copy or move the file into the folder of the score.`,
  },
  'include-too-many': {
    level: 'error',
    sentence: 'The file “{path}” is not included: more than {most} files would be.',
    help: `A score may include 64 files at most, those included by its includes counted. Join some of them.`,
  },
  'too-many-choices': {
    level: 'warning',
    sentence:
      'From here on what is declared cannot be chosen: with “{name}” there are more than {most} readings, sources and hands.',
    help: `Every reading, source and hand is looked at by itself. With the text as written 256 of them can be chosen: the readings first,
then the sources, then the hands, in the order of the file. Those beyond can be cited as before, but are neither proofed nor
exported by themselves. Divide the file.`,
  },
  'include-unsound': {
    level: 'warning',
    sentence: 'The included file “{path}” has errors of its own ({count}).',
    help: `What the included file says rightly is used; what it says wrongly is not, and may be missed here. Open that file, or proof
it by itself:

    bentside proof house.bent`,
  },
  'not-utf8': {
    level: 'error',
    sentence: 'A character here cannot be read: the file is not UTF-8 text ({count} such).',
    help: `Bentside reads UTF-8. A file saved in another encoding shows wrong signs where it has accented letters, and they cannot be
got back from here. Open it in an editor with its old encoding ("Western", "UTF-16" …) and save it as UTF-8.

The finding stands at the first such character. Until the file can be read, what else would be found in it is only counted: most of
it comes of the same cause. A file like this is never rewritten by \`bentside align\`.`,
  },
  'byte-order-mark': {
    level: 'hint',
    sentence: 'The file begins with an invisible byte order mark; it is left out.',
    help: `Some editors put an invisible mark before the first character of a file. It means nothing in UTF-8 and is skipped; columns of
the first line count without it. Save the file as "UTF-8" rather than "UTF-8 with BOM" to be rid of it.`,
  },
  'and-more': {
    level: 'info',
    sentence: 'Further findings in this {where} that are not shown: {count}.',
    help: `Not more than 200 findings of one lane and 2,000 of one file are shown, the gravest first. So many usually have one cause: a
wrong value at the start of a lane, a missing declaration, a file that is no score. Mend the first ones and look again.

This line is as grave as the gravest finding that it hides.`,
  },
});
