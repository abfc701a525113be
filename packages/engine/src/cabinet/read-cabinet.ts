// From the text of a cabinet file to the cabinet, or to everything that is wrong with it. Never throws on a text, never
// gives half a cabinet.

import type { Cabinet, Edit } from './cabinet.ts';
import { createCheck } from './check.ts';
import { checkAir } from './check-air.ts';
import { checkCarcass } from './check-carcass.ts';
import { careComplaints } from './check-care.ts';
import { checkDays, checkMachines, checkRegistries } from './check-days.ts';
import { checkSpools } from './check-filament.ts';
import { checkFittings } from './check-fittings.ts';
import { checkLight } from './check-light.ts';
import { checkEdits, placeOfOption, writtenOptions } from './check-options.ts';
import { checkPower } from './check-power.ts';
import { checkCosts, checkProtection } from './check-protection.ts';
import { checkQueue } from './check-queue.ts';
import { checkSearch, writtenValues } from './check-search.ts';
import { checkSound } from './check-sound.ts';
import { type Complaint, inFileOrder } from './complaint.ts';
import { applyChanges } from './edit-document.ts';
import { changesOf, placeOfOwn } from './edits.ts';
import { fileSections } from './file-schema.ts';
import { fillCabinet } from './fill.ts';
import { checkJoinery } from './fill-joinery.ts';
import type { JobFiles } from './job-file.ts';
import type { Origins } from './origin.ts';
import { type Located, readShape } from './shape-complaints.ts';
import { type SourceTree, sourceTree } from './source-tree.ts';
import type { FileSpec } from './spec.ts';
import { readInBlocks } from './yaml-blocks.ts';
import type { YamlDocument } from './yaml-document.ts';

export type CabinetAnswer =
  | { readonly ok: true; readonly cabinet: Cabinet; readonly origins: Origins; readonly document: YamlDocument }
  | { readonly ok: false; readonly complaints: readonly Complaint[] };

/**
 * Reads a cabinet file, with edits done to it first.
 *
 * @param file - Its name, for messages.
 * @param edits - As they stand under an option of the file, or of one's own; a fault that they cause points at the option's line.
 * @param files - What was read of the job files that its queue names; a job whose file was not read does not stand in the queue's jobs.
 */
export function readCabinet(
  file: string,
  text: string,
  edits: readonly Edit[] = [],
  files: JobFiles = {},
): CabinetAnswer {
  const source = readInBlocks(file, text);
  if ('complaints' in source) return { ok: false, complaints: source.complaints };
  const base = sourceTree(source);
  if (edits.length === 0) {
    const { spec, found } = understand(base, files);
    const written = [...writtenOptions(base), ...writtenValues(spec, base)];
    const edits = checkEdits(source, written, found, (tree) => understand(tree).found);
    const complaints = [...found, ...checkSearch(spec, base), ...edits].map(({ complaint }) => complaint);
    if (complaints.length > 0) return { ok: false, complaints: inFileOrder(complaints) };
    const filled = fillCabinet(spec as FileSpec, base, files);
    const care = careComplaints(filled.cabinet, base);
    if (care.length > 0) return { ok: false, complaints: inFileOrder(care) };
    return { ok: true, ...filled, document: source };
  }
  const placed = changesOf(edits, placeOfOption(base, edits) ?? placeOfOwn);
  const edited = applyChanges(source, placed);
  if (edited.complaints.length > 0) return { ok: false, complaints: inFileOrder(edited.complaints) };
  const tree = sourceTree(edited.document, edited.inserted);
  const { spec, found } = understand(tree, files);
  if (found.length > 0) return { ok: false, complaints: inFileOrder(found.map(({ complaint }) => complaint)) };
  return { ok: true, ...fillCabinet(spec as FileSpec, tree, files), document: source };
}

/** Shape first; meaning of whatever could be read. */
function understand(
  tree: SourceTree,
  files: JobFiles = {},
): {
  readonly spec: Partial<FileSpec>;
  readonly found: readonly Located[];
} {
  const reading = readShape(fileSections(), tree);
  const spec = reading.spec as Partial<FileSpec>;
  const check = createCheck(spec, tree, files);
  checkCarcass(check);
  checkMachines(check);
  checkAir(check);
  checkJoinery(check);
  checkFittings(check);
  checkLight(check);
  checkPower(check);
  checkSpools(check);
  checkDays(check);
  checkQueue(check);
  checkSound(check);
  checkRegistries(check);
  checkProtection(check);
  checkCosts(check);
  return { spec, found: [...reading.complaints, ...check.found] };
}
