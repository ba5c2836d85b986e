// The doorways of a job: one as the page tells it, or each of several doors' beside one another.

/** From left to right, each with what it is called and where its own zero stands, mm. */
export const doorwaysOf = ({ doorways, opening, floor, way, scenery }) =>
  doorways ?? [{ called: '', at: 0, opening, floor, way, clear: scenery.clear, walked: true }];
