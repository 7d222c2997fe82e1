import { readdirSync, readFileSync } from 'node:fs';

/**
 * Memory of the browsers that this process started, MB: proportional, so that shared pages count once. Not that of other browsers on the
 * machine, which is not meant: a look at one browser takes some 50 ms of this thread, at four of them 120 ms and more (measured).
 */
export function browserMemoryMb() {
  let kb = 0;
  for (const id of startedHere()) {
    try {
      if (!readFileSync(`/proc/${id}/cmdline`, 'utf8').includes('chrom')) continue;
      kb += Number(/Pss:\s+(\d+)/.exec(readFileSync(`/proc/${id}/smaps_rollup`, 'utf8'))?.[1] ?? 0);
    } catch {
      // The process ended in the meantime.
    }
  }
  return kb / 1024;
}

/** The processes that descend from this one. */
function startedHere() {
  const children = new Map();
  for (const id of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
    const parent = parentOf(id);
    children.set(parent, [...(children.get(parent) ?? []), id]);
  }
  const found = [];
  for (let next = [String(process.pid)]; next.length > 0; next = next.flatMap((id) => children.get(id) ?? []))
    found.push(...next);
  return found.slice(1);
}

function parentOf(id) {
  try {
    // "id (name) state parent ...", and a name may hold anything.
    return readFileSync(`/proc/${id}/stat`, 'utf8')
      .replace(/^.*\) \S /s, '')
      .split(' ')[0];
  } catch {
    return '';
  }
}

const BETWEEN_MS = 50;

/** Looks now and then, with time for everything else between two looks; `stop` tells the most that was seen, MB. */
export function mostMemory() {
  let most = 0;
  let timer;
  const look = () => {
    most = Math.max(most, browserMemoryMb());
    timer = setTimeout(look, BETWEEN_MS);
  };
  look();
  return {
    stop() {
      clearTimeout(timer);
      return most;
    },
  };
}
