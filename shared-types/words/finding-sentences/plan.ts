import { numberOf, textOf } from '../figures.ts';
import { type FindingSentence, names, oneOrMany, parts, refdes, runName } from './sentence.ts';

export const PLAN_SENTENCES = {
  'no-site': () => ({ what: 'No part to exchange is marked', todo: 'Mark the rework site.' }),
  'no-heat-run': () => ({ what: 'The plan has no heat run', todo: 'Add the heat runs in the stage Heat.' }),
  'site-without-run': (f) => ({
    what: `No heat run serves the site of ${refdes(f)}`,
    todo: 'Add it to a heat run, or remove the site.',
  }),
  'run-without-site': (f) => ({ what: `${runName(f)} serves no site`, todo: 'Choose its sites, or remove the run.' }),
  'run-without-gas': (f) => ({
    what: `${runName(f)} serves ${refdes(f)} but no gas blows there`,
    todo: 'Add a segment with gas at this site.',
  }),
  'tag-on-unknown-part': (f) => ({
    what: `A tag names ${refdes(f)}, which the board does not have`,
    todo: 'Correct the designator or take the tag off.',
  }),
  'tag-on-empty-position': (f) => ({
    what: `${refdes(f)} is tagged ${textOf(f, 'tag')}, but its position is empty`,
    todo: 'Mark it fitted, or take the tag off.',
  }),
  'shield-on-removed-part': (f) => ({
    what: `${refdes(f)} is tagged for a shield and to come off`,
    todo: 'Take one of the two tags off.',
  }),
  'shield-not-in-library': (f) => ({
    what: `The shield '${textOf(f, 'shield')}' on ${names(f)} is not in the library: it counts as none`,
    todo: 'Choose a shield of the list.',
  }),
  'tray-slot-missing': (f) => ({
    what: `${parts(f)} ${oneOrMany(f, 'comes', 'come')} off without a tray slot`,
    todo: 'Give each a slot, so that all of them find their way back.',
  }),
  'tray-slot-twice': (f) => ({
    what: `Tray slot ${textOf(f, 'slot')} is given to ${names(f)}`,
    todo: 'Give each part its own slot.',
  }),
  'order-twice': (f) => ({
    what: `Number ${numberOf(f, 'order')} in the order of work stands on ${names(f)}`,
    todo: 'Number them anew.',
  }),
  'no-watch-point': () => ({
    what: 'No watch point is set: start, stop and abort have nothing to be read on',
    todo: "Put a thermocouple at the target's coldest corner and one on the neighbour with the least margin.",
  }),
  'site-without-removal': (f) => ({
    what: `${refdes(f)} goes on without a removal run`,
    todo: 'Fine for an empty position; else add the removal.',
  }),
  'site-without-installation': (f) => ({
    what: `${refdes(f)} comes off, nothing goes on`,
    todo: 'Fine if that is the order; else add the installation.',
  }),
  'iron-not-modelled': (f) => ({
    what: `${runName(f)}: board temperature only, the iron is not modelled`,
    todo: 'Keep the dwell on each pad short; joints beside the tip get hotter than shown.',
  }),
  'shields-conduct': (f) => ({
    what: `${parts(f)} ${oneOrMany(f, 'carries', 'carry')} a metal shield`,
    todo: 'Keep metal off live pads, cells and bare joints; it does nothing against heat through the board.',
  }),
} satisfies Record<string, FindingSentence>;

export const INPUT_SENTENCES = {
  'parts-off-board': (f) => ({
    what: `${parts(f)} ${oneOrMany(f, 'lies', 'lie')} beside the board and ${oneOrMany(f, 'is', 'are')} not evaluated`,
    todo: 'Check position and outline.',
  }),
  'classes-unknown': (f, m) => ({
    what: `${parts(f)} within ${m.length(numberOf(f, 'nearMm'))} of the rework area: class not known, judged as a connector of unknown plastic`,
    todo: 'Say what each is.',
  }),
  'plastics-unknown': (f, m) => ({
    what: `${parts(f)} within ${m.length(numberOf(f, 'nearMm'))} of the rework area: plastic not known, judged as PBT, which softens early`,
    todo: 'Say which plastic it is: LCP, PA46 and PCT stand reflow.',
  }),
  'laminate-guessed': (f) => ({
    what: `Layers and pours of the board are guessed (${numberOf(f, 'layers')} layers): copper decides how far the heat runs`,
    todo: 'Count the layers at the edge, or ask.',
  }),
  'alloys-unknown': (f, m) => ({
    what: `${numberOf(f, 'count')} parts of unknown alloy are judged as ${textOf(f, 'neighbourAlloy')}, solidus ${m.temperature(numberOf(f, 'neighbourSolidusC'))}`,
    todo: 'Test a joint for lead, then set the alloy for the board.',
  }),
  'classes-guessed': (f, m) => ({
    what: `${parts(f)} within ${m.length(numberOf(f, 'nearMm'))} of the rework area: class guessed from name or size`,
    todo: 'Confirm or change the class: limits hang on it.',
  }),
  'heights-unknown': (f, m) => ({
    what: `${parts(f)} within ${m.length(numberOf(f, 'nearMm'))} of the rework area: height taken from the class`,
    todo: 'Measure the tall ones.',
  }),
  'grid-grown': (f, m) => ({
    what: `The board is too large for a grid of ${m.length(numberOf(f, 'fromMm'))}: cells of ${m.length(numberOf(f, 'cellMm'))} are used`,
    todo: 'Small parts are told less sharply; cut the drawing to the part of the board that is heated.',
  }),
  'outlet-not-measured': () => ({
    what: 'Gas figures are dial settings: the outlet is taken as 90 % of the way from room to setting',
    todo: 'Measure the outlet with a bare thermocouple.',
  }),
  'bands-not-computed': () => ({
    what: 'Bands are not computed yet: margins stand without their uncertainty',
    todo: 'Keep a distance from every limit and read thermocouples.',
  }),
} satisfies Record<string, FindingSentence>;
