/** The page that opens the workbench on the served folder. */

/** What every test has: nothing that asks, animates or calls home. */
export const QUIET = {
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.welcomePage.walkthroughs.openOnInstall': false,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'chat.disableAIFeatures': true,
  'telemetry.telemetryLevel': 'off',
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'workbench.enableExperiments': false,
  'security.workspace.trust.enabled': false,
  'editor.accessibilitySupport': 'off',
  'files.autoSave': 'off',
  'workbench.reduceMotion': 'on',
} as const;

export function workbenchPage(host: string, extensions: number, settings: Readonly<Record<string, unknown>>): string {
  const config = {
    productConfiguration: {
      nameShort: 'Editor',
      nameLong: 'Editor',
      applicationName: 'editor',
      dataFolderName: '.editor',
      quality: 'stable',
      enableTelemetry: false,
      webviewContentExternalBaseUrlTemplate: `http://{{uuid}}.${host}/editor/out/vs/workbench/contrib/webview/browser/pre/`,
      extensionEnabledApiProposals: {},
    },
    additionalBuiltinExtensions: Array.from({ length: extensions }, (_, index) => ({
      scheme: 'http',
      authority: host,
      path: `/extension/${index}`,
    })),
    configurationDefaults: { ...QUIET, ...settings },
  };
  return `<!DOCTYPE html>
<html>
<head>
<meta charset="utf-8">
<link rel="icon" href="/editor/favicon.ico">
<link rel="stylesheet" href="/editor/out/vs/workbench/workbench.web.main.internal.css">
</head>
<body aria-label=""></body>
<script>globalThis._VSCODE_FILE_ROOT = location.origin + '/editor/out/';</script>
<script type="module" src="/editor/out/nls.messages.js"></script>
<script type="module">
import { commands, create, URI } from '/editor/out/vs/workbench/workbench.web.main.internal.js';
const config = ${JSON.stringify(config)};
const folderUri = URI.revive({ scheme: 'testfiles', authority: '', path: '/' });
globalThis.workbench = {
  run: (command, ...args) => commands.executeCommand(command, ...args),
  address: (path) => URI.revive({ scheme: 'testfiles', authority: '', path }),
};
create(document.body, {
  ...config,
  additionalBuiltinExtensions: config.additionalBuiltinExtensions.map((one) => URI.revive(one)),
  workspaceProvider: { workspace: { folderUri }, trusted: true, open: async () => true },
});
</script>
</html>`;
}
