import { Button as BareButton, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { rounded } from '../../../shared-types/words/measures.ts';
import { useDocument } from '../../state/use-app.ts';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';

type FlowProps = { label: string; flowLMin: number; set: (fields: { flowLMin: number }) => void };

/** The gas flow of a segment: a level of the dial where the station has levels, else L/min. */
export function FlowCell({ label, flowLMin, set }: FlowProps) {
  const { flowLevels } = useDocument().plan.station;
  if (flowLevels.length === 0)
    return (
      <NumberEntry
        bare
        label={label}
        value={flowLMin}
        least={0}
        most={500}
        decimals={0}
        onChange={(value) => value !== null && set({ flowLMin: value })}
      />
    );
  const level = flowLevels.find((one) => one.flowLMin === flowLMin);
  const shown = level?.name ?? rounded(flowLMin);
  return (
    <MenuTrigger>
      <BareButton className="level-button" aria-label={`${label}: ${shown}`}>
        {shown}
      </BareButton>
      <Popover className="popover" placement="bottom end">
        <Menu
          className="menu"
          items={flowLevels.map((one, index) => ({ id: index, ...one }))}
          onAction={(index) => {
            const chosen = flowLevels[Number(index)];
            if (chosen) set({ flowLMin: chosen.flowLMin });
          }}
        >
          {(one) => (
            <MenuItem id={one.id} className="menu-item" textValue={one.name}>
              {one.name} <span className="more">{rounded(one.flowLMin)} L/min</span>
            </MenuItem>
          )}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
