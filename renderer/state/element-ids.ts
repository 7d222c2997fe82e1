/** Ids that actions use to reach an element of the page. */
export const FIND_BOX_ID = 'find-part';
export const PACKAGE_BOX_ID = 'place-package';
export const PROFILE_SEARCH_ID = 'profile-search';
