package org.duskline.web.app;

import picocli.CommandLine.Command;

/** What every command understands. */
@Command(mixinStandardHelpOptions = true, versionProvider = Program.Version.class)
final class Standard {}
