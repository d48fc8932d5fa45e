/** The compressed form of MusicXML: a ZIP archive whose `META-INF/container.xml` names the document. */
import { strToU8, type Zippable, zipSync } from 'fflate';
import { printXml, xml } from '../xml';

/** MusicXML 4.0, "Compressed .mxl files": the media types of the archive and of the document in it. */
const ARCHIVE_TYPE = 'application/vnd.recordare.musicxml';
const DOCUMENT_TYPE = 'application/vnd.recordare.musicxml+xml';
const DOCUMENT = 'score.musicxml';

/** A day that ZIP can write, so that equal scores give equal bytes wherever and whenever they are written. */
const DAY = '1980-01-01T12:00:00';

/** Bytes of an archive that holds this document. The media type comes first and is not packed. */
export function zipMusicXml(text: string): Uint8Array {
  const root = { 'full-path': DOCUMENT, 'media-type': DOCUMENT_TYPE };
  const container = printXml(xml('container', {}, [xml('rootfiles', {}, [xml('rootfile', root)])]));
  const files: Zippable = {
    mimetype: [strToU8(ARCHIVE_TYPE), { level: 0, mtime: DAY }],
    'META-INF/container.xml': [strToU8(container.text), { mtime: DAY }],
    [DOCUMENT]: [strToU8(text), { mtime: DAY }],
  };
  return zipSync(files, { level: 6 });
}
