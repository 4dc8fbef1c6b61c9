/* The registers that this board uses, of the STM32L0 family (Cortex-M0+), by the
 * names and offsets of its reference manual RM0376. */
#ifndef DUSKLINE_REGISTERS_H
#define DUSKLINE_REGISTERS_H

#include <stdint.h>

#define REGISTER(address) (*(volatile uint32_t *)(address))

#define RCC_CR REGISTER(0x40021000u)
#define RCC_CFGR REGISTER(0x4002100Cu)
#define RCC_IOPENR REGISTER(0x4002102Cu)
#define RCC_APB2ENR REGISTER(0x40021034u)
#define RCC_APB1ENR REGISTER(0x40021038u)
#define RCC_CCIPR REGISTER(0x4002104Cu)
#define RCC_CSR REGISTER(0x40021050u)
#define PWR_CR REGISTER(0x40007000u)
#define FLASH_ACR REGISTER(0x40022000u)

#define GPIOA 0x50000000u
#define GPIOB 0x50000400u
#define GPIO_MODER(port) REGISTER((port) + 0x00u)
#define GPIO_OTYPER(port) REGISTER((port) + 0x04u)
#define GPIO_IDR(port) REGISTER((port) + 0x10u)
#define GPIO_BSRR(port) REGISTER((port) + 0x18u)
#define GPIO_AFRL(port) REGISTER((port) + 0x20u)
#define GPIO_AFRH(port) REGISTER((port) + 0x24u)

#define ADC_ISR REGISTER(0x40012400u)
#define ADC_CR REGISTER(0x40012408u)
#define ADC_CFGR2 REGISTER(0x40012410u)
#define ADC_SMPR REGISTER(0x40012414u)
#define ADC_CHSELR REGISTER(0x40012428u)
#define ADC_DR REGISTER(0x40012440u)
#define ADC_CCR REGISTER(0x40012708u)

#define SYSCFG_CFGR3 REGISTER(0x40010020u)
/* Code of the built-in reference, measured by the maker at a supply of 3.0 V. */
#define REFERENCE_CODE_AT_3000_MV (*(const uint16_t *)0x1FF80078u)

#define SPI1_CR1 REGISTER(0x40013000u)
#define SPI1_SR REGISTER(0x40013008u)
#define SPI1_DR8 (*(volatile uint8_t *)0x4001300Cu)

#define USART1_CR1 REGISTER(0x40013800u)
#define USART1_BRR REGISTER(0x4001380Cu)
#define USART1_ISR REGISTER(0x4001381Cu)
#define USART1_ICR REGISTER(0x40013820u)
#define USART1_RDR REGISTER(0x40013824u)
#define USART1_TDR REGISTER(0x40013828u)

#define LPTIM1_ISR REGISTER(0x40007C00u)
#define LPTIM1_ICR REGISTER(0x40007C04u)
#define LPTIM1_IER REGISTER(0x40007C08u)
#define LPTIM1_CR REGISTER(0x40007C10u)
#define LPTIM1_CMP REGISTER(0x40007C14u)
#define LPTIM1_ARR REGISTER(0x40007C18u)
#define LPTIM1_CNT REGISTER(0x40007C1Cu)
#define LPTIM1_IRQ 13u
#define USART1_IRQ 27u

#define IWDG_KR REGISTER(0x40003000u)
#define IWDG_PR REGISTER(0x40003004u)

/* The core's own timer, by the architecture's reference manual (ARMv6-M). */
#define SYST_CSR REGISTER(0xE000E010u)
#define SYST_RVR REGISTER(0xE000E014u)
#define SYST_CVR REGISTER(0xE000E018u)

#define NVIC_ISER REGISTER(0xE000E100u)
#define SCB_SCR REGISTER(0xE000ED10u)
#define UNIQUE_ID ((const uint32_t *)0x1FF80050u)

#endif
