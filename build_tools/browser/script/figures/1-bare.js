// Figures and the unit that stands in their box, for forms and for readings alike.

/** A text of figures and signs alone, without any unit. */
const isBare = (text) => /\d|[¼-¾⅐-⅞]/.test(text) && !/[a-z'"`´‘-‟′-‴:%°]/i.test(text);
