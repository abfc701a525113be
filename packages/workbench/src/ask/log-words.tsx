// What two questions about a log have in common: what was wrong with it, and its picture.

import { type LogFault, type LogRemark, remarkText } from '@stillair/engine';
import { Picture } from './picture.tsx';

export function LogFaultView({ fault, mend }: LogFault) {
  return (
    <p role="alert">
      Nothing came of it: {inPage(fault)}. To mend: {inPage(mend)}.
    </p>
  );
}

export function LogRemarks({ remarks }: { readonly remarks: readonly LogRemark[] }) {
  if (remarks.length === 0) return null;
  return (
    <>
      <h3>Of the log</h3>
      <ul>
        {remarks.map((remark) => (
          <li key={`${remark.code} ${remark.column ?? ''} ${remark.line ?? ''}`}>{inPage(remarkText(remark))}</li>
        ))}
      </ul>
    </>
  );
}

/** Where the words of the command line stand on the page. */
function inPage(text: string): string {
  return text
    .replaceAll(/--column "([^"]*)"/g, '$1, under “columns and clock”')
    .replaceAll('--shift', 'a shift, under “columns and clock”,');
}

export function LogPicture({ picture, alt }: { readonly picture: string | undefined; readonly alt: string }) {
  return picture === undefined ? null : <Picture svg={picture} alt={alt} />;
}
