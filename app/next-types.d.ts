// Types of stylesheets and images for a type check that runs before the first build has written its own.
/// <reference types="next" />
/// <reference types="next/image-types/global" />
