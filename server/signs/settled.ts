/**
 * Where the editor has said how a sign is played: by a word in round brackets that the table knows, or by an annotation of
 * kind `performance` that the sign bears.
 */
import type { Environment } from '../score/environment';
import type { BorneSign } from './bearing';
import type { PlayedRow } from './rows';
import { isSaidBy } from './said';

/** The kind of annotation that says how something is played. */
export const HOW_PLAYED = 'performance';

/** Somebody stands for how it is played, whatever the table makes of it. */
export const isAccepted = ({ mark }: BorneSign, { notes }: Pick<Environment, 'notes'>): boolean =>
  mark.annotations.some(({ annotation: { ref } }) => ref !== undefined && notes.get(ref)?.about === HOW_PLAYED);

/** @param row by which the signs are played together */
export const isSettled = (
  signs: readonly BorneSign[],
  row: PlayedRow | undefined,
  environment: Pick<Environment, 'notes'>,
): boolean => signs.some((sign) => isAccepted(sign, environment) || (row !== undefined && isSaidBy(sign, row)));
