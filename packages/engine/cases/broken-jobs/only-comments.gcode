; made for a printer
; of which nothing is left
