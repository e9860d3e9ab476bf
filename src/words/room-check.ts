/** What is looked at once, before the first cup of an evening. Common practice, no source; the page Care says why. */
export const ROOM_CHECK: readonly { readonly id: string; readonly text: string }[] = [
  { id: 'air', text: 'The fan or the hood is on and blows outside, and a window lets fresh air in.' },
  { id: 'fire', text: 'The extinguisher and a lid are by the door, not above the heat.' },
  { id: 'tap', text: 'I know the way to the nearest cold tap.' },
  { id: 'probe', text: 'The probe read right in boiling water, and it’s dry.' },
  { id: 'clothes', text: 'Goggles, gloves, long sleeves and closed shoes are on.' },
  { id: 'bench', text: 'No food, no water and no flame near the bench.' },
  { id: 'people', text: 'Children, pets and birds are out, and somebody knows that I’m pouring.' },
];
