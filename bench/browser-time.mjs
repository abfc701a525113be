// Processor time of the threads of a browser's page, as Linux counts it: unlike the clock on the wall it says little of whatever
// else the machine does.

import { readdirSync, readFileSync } from 'node:fs';

/** ms; the kernel counts in hundredths of a second wherever browsers run. */
const TICK = 10;

/**
 * @param {string} profile folder of the browser's profile, by which its processes are told from those of others
 * @returns {{ page: number, workers: number[] } | undefined} ms used so far by the page's thread and by each of its workers;
 *   nothing where the system does not tell
 */
export function browserTime(profile) {
  const pages = renderers(profile).map(threadsOf);
  const busiest = pages.sort((a, b) => total(b) - total(a))[0];
  return busiest === undefined ? undefined : { page: busiest.page, workers: busiest.workers };
}

const total = (/** @type {{ page: number, workers: number[] }} */ { page, workers }) =>
  workers.reduce((sum, each) => sum + each, page);

/** @param {string} profile */
function renderers(profile) {
  try {
    const processes = readdirSync('/proc').filter((name) => /^\d+$/.test(name));
    const browser = processes.find((id) => words(id).includes(`--user-data-dir=${profile}`) && !isChild(id));
    const family = new Set([browser]);
    const parents = new Map(processes.map((id) => [id, parentOf(id)]));
    for (let grown = 0; grown !== family.size; ) {
      grown = family.size;
      for (const [id, parent] of parents) if (family.has(parent)) family.add(id);
    }
    return [...family].filter((id) => id !== undefined && words(id).includes('--type=renderer'));
  } catch {
    return [];
  }
}

const isChild = (/** @type {string} */ id) => words(id).some((word) => word.startsWith('--type='));

/** @param {string} id */
function words(id) {
  try {
    return readFileSync(`/proc/${id}/cmdline`, 'utf8').split(/[\0 ]/);
  } catch {
    return []; // it has ended
  }
}

/** @param {string} id */
function parentOf(id) {
  try {
    return fieldsOf(`/proc/${id}/stat`)[1];
  } catch {
    return undefined;
  }
}

/** Fields of a `stat` behind the name, which may hold spaces and brackets. @param {string} path */
function fieldsOf(path) {
  const stat = readFileSync(path, 'utf8');
  return stat.slice(stat.lastIndexOf(')') + 2).split(' ');
}

/** @param {string} id */
function threadsOf(id) {
  /** @type {number[]} */
  const workers = [];
  let page = 0;
  for (const thread of readdirSync(`/proc/${id}/task`)) {
    const fields = fieldsOf(`/proc/${id}/task/${thread}/stat`);
    const used = TICK * (Number(fields[11]) + Number(fields[12]));
    const name = readFileSync(`/proc/${id}/task/${thread}/comm`, 'utf8').trim();
    if (thread === id) page = used;
    else if (name.startsWith('DedicatedWorker')) workers.push(used);
  }
  return { page, workers };
}
