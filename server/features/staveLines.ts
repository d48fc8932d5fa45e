/** How many lines a clef has to stand on. */
import type { Project } from '../workspace/project';
import type { Holder } from './nodes';

const USUAL = 5;

/** Lines of the stave of this name. */
export const linesOf = ({ environment: { staves } }: Project, name: string | undefined): number =>
  staves.find((stave) => stave.name === name)?.lines ?? USUAL;

/** Lines of the stave on which a lane stands. */
export function linesUnder(project: Project, holder: Holder): number {
  const { voices, staves } = project.environment;
  const voice = holder.kind === 'lane' ? voices.find(({ name }) => name === holder.placed.name.text) : undefined;
  return linesOf(project, staves[voice?.stave ?? -1]?.name);
}
