/** The task that proofs all scores of a folder by the command line; its findings go to the Problems view. */
import { type Disposable, l10n, ShellExecution, Task, TaskGroup, tasks, type WorkspaceFolder, workspace } from 'vscode';

const TYPE = 'bentside';
/** The matcher in package.json. */
const MATCHER = '$bentside';

export const proofTasks = (): Disposable =>
  tasks.registerTaskProvider(TYPE, {
    provideTasks: () => (workspace.workspaceFolders ?? []).map((folder) => proofTask(folder, '**/*.bent')),
    resolveTask: (task) => {
      const { files } = task.definition as { readonly files?: string };
      return typeof task.scope === 'object' ? proofTask(task.scope, files ?? '**/*.bent') : undefined;
    },
  });

function proofTask(folder: WorkspaceFolder, files: string): Task {
  const run = new ShellExecution('npx', ['bentside', 'proof', files]);
  const task = new Task({ type: TYPE, files }, folder, l10n.t('proof all scores'), 'bentside', run, MATCHER);
  task.group = TaskGroup.Test;
  return task;
}
