/** What a file states once, and its practices. */
import { clauseOf, clausesOf, firstOf } from '../../../grammar/statements/read';
import { midiOfTyped } from '../../../grammar/vocabulary/pitches';
import { lookUp, statements as vocabulary } from '../../../grammar/vocabulary/statements';
import type { Environment, VoiceDeclaration } from '../environment';
import type { FileSource, Tempo } from '../score';
import type { Declarations, Found } from './declarations';

/** Statements that stand once in a file: a second one is passed over. */
export function checkOnce(declarations: Declarations): void {
  const first = new Map<string, Found>();
  for (const found of declarations.all) {
    const { keyword } = found.statement;
    const entry = lookUp(vocabulary, keyword);
    if (entry === undefined || entry.repeats || found.declared.file !== undefined) continue;
    const before = first.get(keyword);
    if (before === undefined) {
      first.set(keyword, found);
      continue;
    }
    const { block, statement, pos } = before.declared;
    const source: FileSource = { block, lane: -1, statement, pos, len: keyword.length };
    const related = [{ message: `\`${keyword}\` is stated here first`, source }];
    const at = { pos: found.statement.pos, len: keyword.length };
    declarations.report(found, at, 'stated-twice', { name: keyword }, { related });
  }
}

export function tempoOf(declarations: Declarations): Tempo | undefined {
  const found = declarations.of('tempo').find(({ head, declared }) => head && declared.file === undefined);
  const value = firstOf(found?.statement.args ?? [], 'value');
  const rate = firstOf(found?.statement.args ?? [], 'number');
  return value === undefined || rate === undefined ? undefined : { value: value.form, perMinute: rate.value };
}

export function compassOf(declarations: Declarations): Environment['compass'] {
  const instrument = declarations.first('instrument')?.statement;
  const keys = instrument && firstOf(clauseOf(instrument, 'compass')?.args ?? [], 'pair');
  return keys && { low: midiOfTyped(keys.first), high: midiOfTyped(keys.second) };
}

export const beamingOf = (declarations: Declarations): Environment['beaming'] =>
  declarations.of('beaming').flatMap(({ statement: { args } }) => {
    const [value, by] = [firstOf(args, 'value'), firstOf(args, 'number')];
    return value === undefined || by === undefined ? [] : [{ value: value.form, by: by.value }];
  });

/** Practices of rhythm can be for one voice: it must be there. */
export function checkPractices(declarations: Declarations, voices: readonly VoiceDeclaration[]): void {
  const known = new Set(voices.map((voice) => voice.name));
  const practices = declarations.all.flatMap((found) => [
    ...(found.statement.keyword === 'practice' ? [{ found, args: found.statement.args }] : []),
    ...(found.statement.keyword === 'reading' ? clausesOf(found.statement, 'practice') : []).map(({ args }) => ({
      found,
      args,
    })),
  ]);
  for (const { found, args } of practices) {
    const index = args.findIndex((arg) => arg.kind === 'word' && arg.text === 'voice');
    const voice = index < 0 ? undefined : args[index + 1];
    if (voice?.kind === 'name' && !known.has(voice.text)) {
      declarations.unknown(found, voice, 'unknown-voice', known);
    }
  }
}
