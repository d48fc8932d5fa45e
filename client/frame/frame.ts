/** A panel and the frame of its page. Nothing in that runs, or comes from anywhere, but its own two files and the style of all. */
import { env, Uri, type Webview, type WebviewPanel } from 'vscode';

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text as it stands in a page: a translation may hold any sign. */
export const safe = (text: string): string => text.replace(/[&<>"]/g, (sign) => ESCAPES[sign] ?? sign);

interface Framed {
  /** Of its script and its style in `dist/`: `panel` for `panel.js`. */
  readonly name: string;
  readonly title: string;
  /** Markup. */
  readonly body: string;
}

export function framed(webview: Webview, extension: Uri, { name, title, body }: Framed): string {
  const address = (file: string): string => webview.asWebviewUri(Uri.joinPath(extension, 'dist', file)).toString();
  const policy = [
    "default-src 'none'",
    `script-src ${webview.cspSource}`,
    `style-src ${webview.cspSource}`,
    'img-src blob:',
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="${safe(env.language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${safe(title)}</title>
<link rel="stylesheet" href="${address('frame.css')}">
<link rel="stylesheet" href="${address(`${name}.css`)}">
</head>
<body>
${body}
<script src="${address(`${name}.js`)}"></script>
</body>
</html>`;
}

interface Dwelling<Message> {
  readonly html: (webview: Webview, extension: Uri) => string;
  readonly heard: (message: Message) => unknown;
  readonly closed: () => void;
}

/** Makes a page of ours live in a panel that is new, or was there before the window was loaded again. */
export function moveInto<Message>(
  panel: WebviewPanel,
  extension: Uri,
  { html, heard, closed }: Dwelling<Message>,
): void {
  panel.webview.options = { enableScripts: true, localResourceRoots: [Uri.joinPath(extension, 'dist')] };
  panel.iconPath = Uri.joinPath(extension, 'client', 'media', 'icon.png');
  panel.webview.onDidReceiveMessage(heard);
  panel.onDidDispose(closed);
  panel.webview.html = html(panel.webview, extension);
}
