/** How long a night is: to the shop's next opening, but at least so long. Common practice, no source. */

/** Hours that `overnight` takes at least, and that a filler dries whose label states no time. */
export const NIGHT_H = 12;

/** Hours of a night where no shop says when it opens: from the evening to the next morning. */
export const NIGHT_WITHOUT_SHOP_H = 16;
