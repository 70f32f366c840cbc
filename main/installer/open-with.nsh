; Windows goes by what stands after the last dot of a name, and "piece.ringtrue.json" ends in ".json". So the program
; offers itself under "Open with" for such files, and leaves alone what opens them by a double click.
!define PROJECT_CLASS "Ringtrue.Project"

!macro customInstall
  WriteRegStr SHELL_CONTEXT "Software\Classes\${PROJECT_CLASS}" "" "Ringtrue project"
  WriteRegStr SHELL_CONTEXT "Software\Classes\${PROJECT_CLASS}\shell\open\command" "" '"$INSTDIR\${APP_EXECUTABLE_FILENAME}" "%1"'
  WriteRegNone SHELL_CONTEXT "Software\Classes\.json\OpenWithProgids" "${PROJECT_CLASS}"
!macroend

!macro customUnInstall
  DeleteRegValue SHELL_CONTEXT "Software\Classes\.json\OpenWithProgids" "${PROJECT_CLASS}"
  DeleteRegKey SHELL_CONTEXT "Software\Classes\${PROJECT_CLASS}"
!macroend
