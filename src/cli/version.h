/* version.h - which version of the program this is. */
#ifndef CLI_VERSION_H
#define CLI_VERSION_H

#define VERSION "0.1"

#endif
